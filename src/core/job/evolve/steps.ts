import type { Entry } from '../entry';
import type { Job } from '../job';
import { stepIn } from '../plan';
import { withEnd, withoutEnds, withTimer } from './ends';

export function stepDone(job: Job, id: string, entry: Entry): Job {
  const { step } = stepIn(job.plan, id);
  // A step that had been skipped is its own loose end until now.
  let next = withoutEnds({ ...job, steps: new Map(job.steps).set(id, 'done') }, [id, ...step.closes]);
  for (const end of step.opens) {
    const spec = job.plan.procedure.looseEnds.get(end);
    if (spec) next = withEnd(next, end, { what: spec.say, blocks: spec.blocks, why: 'step' });
  }
  for (const timer of step.startsTimers) {
    const spec = job.plan.procedure.timers.get(timer);
    if (spec) next = withTimer(next, timer, spec.minutes * 60_000, entry);
  }
  return next;
}

/** A skip is a debt: the step stays open as a loose end that blocks the next milestone, or the hand-back. */
export function stepSkipped(job: Job, id: string): Job {
  const { order } = job.plan;
  const later = order.slice(order.indexOf(id)).map((s) => stepIn(job.plan, s).step.milestone);
  const blocks = later.find((m) => m !== undefined) ?? 'hand-back';
  const what = stepIn(job.plan, id).step.say;
  return withEnd({ ...job, steps: new Map(job.steps).set(id, 'skipped') }, id, { what, blocks, why: 'skipped' });
}
