import type { Moment } from '../job/entry';
import type { Job } from '../job/job';
import { isLeftOut, workPlace } from '../job/place';
import { stepIn } from '../job/plan';
import { timeLeft } from '../job/timer';
import { waitsOf } from '../job/waits';
import type { Step } from '../procedure/procedure';
import type { BenchView } from './bench-view';

/**
 * The waits that matter now: all that run, and of those that are over the ones a step ahead asks for, or that were begun
 * at the step before this one. A long job begins many, and those long over would push the work off the screen.
 */
export function timersOf(job: Job, now: Moment): BenchView['timers'] {
  const steps = job.plan.order.map((id) => stepIn(job.plan, id).step).filter((step) => !isLeftOut(job, step));
  const work = workPlace(job);
  const at = 'step' in work ? steps.findIndex(({ id }) => id === work.step) : steps.length;
  const asked = new Set(steps.filter(({ id }) => !job.steps.has(id)).flatMap(asksFor));
  const fresh = new Set(steps.slice(Math.max(0, at - 1), at).flatMap((step) => step.startsTimers));
  return [...job.timers].flatMap(([id, timer]) => {
    const leftMs = timeLeft(timer, now);
    const matters = leftMs > 0 || asked.has(id) || fresh.has(id);
    return matters ? [{ say: timer.say, leftMs, over: leftMs === 0 }] : [];
  });
}

/** What a step waits for, before it or in it. */
const asksFor = (step: Step): readonly string[] => [
  ...waitsOf(step),
  ...('passes' in step ? step.passes.flatMap((pass) => (pass.kind === 'wait' ? [pass.timer] : [])) : []),
];
