import type { Built } from '../build/build-procedure';
import type { Path, Report } from '../issue';
import type { Step } from '../procedure';
import { type AnswersOf, type Condition, conditionOf, meet, without } from './condition';

/**
 * A timer that a step needs must have been started on every branch that leads there, or the job waits for ever.
 * A wait starts its own timer when it is reached, but only where that timer has not run before: waited for twice, it
 * would be over at once the second time.
 */
export function checkTimers({ steps, procedure }: Built, answersOf: AnswersOf, report: Report): void {
  const notStarted = new Map<string, Condition | null>([...procedure.timers.keys()].map((id) => [id, 'always']));
  const over = new Map<string, Condition>();
  for (const { step, at } of steps) {
    const condition = conditionOf(step);
    for (const [index, id] of step.needsTimers.entries()) {
      const missing = notStarted.get(id);
      if (missing && meet(missing, condition)) reportUnstarted(id, [...at, 'needs-timers', index], report);
    }
    for (const { id, at: place } of waitsOf(step, at)) {
      const before = over.get(id);
      if (before !== undefined && meet(before, condition)) reportOver(id, place, report);
      over.set(id, condition);
    }
    for (const id of step.startsTimers) over.delete(id);
    for (const id of [...step.startsTimers, ...waitsOf(step, at).map((wait) => wait.id)]) {
      const missing = notStarted.get(id);
      if (missing) notStarted.set(id, without(missing, condition, answersOf));
    }
  }
}

function waitsOf(step: Step, at: Path): readonly { readonly id: string; readonly at: Path }[] {
  if (step.kind === 'wait') return [{ id: step.timer, at: [...at, 'timer'] }];
  if (step.kind !== 'tighten' && step.kind !== 'slacken') return [];
  return step.passes.flatMap((pass, index) =>
    pass.kind === 'wait' ? [{ id: pass.timer, at: [...at, 'passes', index, 'wait'] }] : [],
  );
}

function reportUnstarted(id: string, at: Path, report: Report): void {
  report.error('timer-never-started', at, id, { id });
}

function reportOver(id: string, at: Path, report: Report): void {
  report.error('timer-already-over', at, id, { id });
}
