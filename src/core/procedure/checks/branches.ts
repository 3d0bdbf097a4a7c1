import type { Built } from '../build/build-procedure';
import type { Report } from '../issue';
import type { Step } from '../procedure';
import type { AnswersOf } from './condition';

/** The answers of each question that let the job go on: wrong ones are asked again and decide nothing. */
export function answersIn({ steps }: Built): AnswersOf {
  const answers = new Map(steps.map(({ step }) => [step.id, rightAnswers(step)]));
  return (step) => answers.get(step) ?? [];
}

const rightAnswers = (step: Step): readonly string[] =>
  (step.question?.answers ?? []).filter(({ right }) => right).map(({ id }) => id);

/** A branch hangs on a question that has been answered by then, and on answers that can be given. */
export function checkBranches({ steps, texts }: Built, answersOf: AnswersOf, report: Report): void {
  const all = new Set(texts.map(({ value }) => value.id));
  const before = new Set<string>();
  for (const { step, at } of steps) {
    if (step.only) {
      const { step: asked, answers } = step.only;
      const place = [...at, 'only-if', 'step'];
      if (!all.has(asked)) {
        report.error('unknown-step', place, asked, { step: asked });
      } else if (!before.has(asked)) {
        report.error('branch-before-question', place, asked, { step: asked });
      } else {
        const known = answersOf(asked);
        for (const [index, answer] of answers.entries()) {
          if (known.includes(answer)) continue;
          const here = [...at, 'only-if', 'answers', index];
          if (known.length === 0) report.error('unknown-answer.no-finding', here, answer, { step: asked, answer });
          else report.error('unknown-answer', here, answer, { step: asked, answer, known });
        }
      }
    }
    before.add(step.id);
  }
}
