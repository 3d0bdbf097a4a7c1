import type { Step } from '../procedure';

/** When something holds: always, or only where one earlier question got one of these answers. */
export type Condition = { readonly step: string; readonly answers: readonly string[] } | 'always';

export const conditionOf = (step: Step): Condition => step.only ?? 'always';

/** The answers that let the job go on, by the step that asks. */
export type AnswersOf = (step: string) => readonly string[];

/** Where `held` is left once it no longer holds under `taken`; null when nowhere. Conditions on two questions stay as they are. */
export function without(held: Condition, taken: Condition, answersOf: AnswersOf): Condition | null {
  if (taken === 'always') return null;
  if (held !== 'always' && held.step !== taken.step) return held;
  const before = held === 'always' ? answersOf(taken.step) : held.answers;
  const answers = before.filter((answer) => !taken.answers.includes(answer));
  return answers.length === 0 ? null : { step: taken.step, answers };
}

/** Whether both can hold in one job. */
export const meet = (a: Condition, b: Condition): boolean =>
  a === 'always' || b === 'always' || a.step !== b.step || a.answers.some((answer) => b.answers.includes(answer));
