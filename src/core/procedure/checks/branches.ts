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
        report.error(
          'unknown-step',
          place,
          asked,
          `There is no step "${asked}".`,
          'Name the step that asks the question.',
        );
      } else if (!before.has(asked)) {
        report.error('branch-before-question', place, asked, `"${asked}" comes later.`, 'Ask before the job branches.');
      } else {
        const known = answersOf(asked);
        for (const [index, answer] of answers.entries()) {
          if (known.includes(answer)) continue;
          const mend = known.length > 0 ? `Use ${known.join(', ')}.` : `Give "${asked}" a finding.`;
          const message = `"${asked}" cannot be answered "${answer}" and go on.`;
          report.error('unknown-answer', [...at, 'only-if', 'answers', index], answer, message, mend);
        }
      }
    }
    before.add(step.id);
  }
}
