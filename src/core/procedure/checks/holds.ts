import type { Built } from '../build/build-procedure';
import type { Report } from '../issue';

const STEPS_A_HOLD = 10;

/** Where every other step must be read back, none is listened to any more. One is always allowed. */
export function checkHolds({ steps }: Built, report: Report): void {
  const holds = steps.filter(({ step }) => step.question?.answers.some(({ right }) => !right));
  const most = Math.ceil(steps.length / STEPS_A_HOLD);
  const first = holds[most];
  if (first === undefined) return;
  report.warning('too-many-holds', first.at, `${holds.length} / ${steps.length}`, { steps: STEPS_A_HOLD });
}
