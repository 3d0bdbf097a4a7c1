import type { Built } from '../build/build-procedure';
import type { Report } from '../issue';
import type { Step } from '../procedure';
import { type AnswersOf, type Condition, conditionOf, meet, without } from './condition';

/**
 * A timer that a step needs must have been started on every branch that leads there, or the job waits for ever.
 * A waiting step or pass needs no start: it is where the person starts the timer.
 */
export function checkTimers({ steps, procedure }: Built, answersOf: AnswersOf, report: Report): void {
  const notStarted = new Map<string, Condition | null>([...procedure.timers.keys()].map((id) => [id, 'always']));
  for (const { step, at } of steps) {
    const condition = conditionOf(step);
    for (const [index, id] of step.needsTimers.entries()) {
      const missing = notStarted.get(id);
      if (!missing || !meet(missing, condition)) continue;
      const message = `No earlier step surely starts "${id}".`;
      report.error(
        'timer-never-started',
        [...at, 'needs-timers', index],
        id,
        message,
        'Add "starts-timers:" to the step it runs from.',
      );
    }
    for (const id of startedBy(step)) {
      const missing = notStarted.get(id);
      if (missing) notStarted.set(id, without(missing, condition, answersOf));
    }
  }
}

function startedBy(step: Step): readonly string[] {
  const passes = step.kind === 'tighten' || step.kind === 'slacken' ? step.passes : [];
  const waits = passes.flatMap((pass) => (pass.kind === 'wait' ? pass.timer : []));
  return [...step.startsTimers, ...waits, ...(step.kind === 'wait' ? [step.timer] : [])];
}
