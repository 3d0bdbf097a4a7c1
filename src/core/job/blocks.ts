import type { Moment } from './entry';
import type { Job, LooseEnd } from './job';
import { isLeftOut, passStatesOf } from './place';
import { stepIn } from './plan';
import { boltState, passState } from './tightening';
import { timeLeft } from './timer';

/** One thing that keeps a job from being closed. */
export type Block =
  /** Something was asked and not answered yet. */
  | { readonly kind: 'question' }
  /** Fasteners of one step that nobody may call done before they are settled or proved. */
  | {
      readonly kind: 'bolts';
      readonly is: 'held' | 'unknown';
      readonly step: string;
      readonly bolts: readonly number[];
    }
  /** Steps of one phase that are still to be done; those put off are loose ends. */
  | { readonly kind: 'steps'; readonly phase: string; readonly left: number }
  | { readonly kind: 'end'; readonly end: LooseEnd }
  /** A wait that is still running, in milliseconds. */
  | { readonly kind: 'timer'; readonly say: string; readonly leftMs: number };

/** All that still blocks closing a job, what presses most first. A job is closed only where this list is empty. */
export const blocksOf = (job: Job, now: Moment): readonly Block[] => [
  ...(job.pending && job.pending.kind !== 'close-job' ? [{ kind: 'question' as const }] : []),
  ...boltsIn(job, 'held'),
  ...boltsIn(job, 'unknown'),
  ...stepsLeft(job),
  ...[...job.ends.values()].map((end): Block => ({ kind: 'end', end })),
  ...timersRunning(job, now),
];

function boltsIn(job: Job, is: 'held' | 'unknown'): readonly Block[] {
  return job.plan.order.flatMap((id): readonly Block[] => {
    const { step, passes } = stepIn(job.plan, id);
    if (isLeftOut(job, step)) return [];
    const states = passStatesOf(job, id);
    const bolts = new Set(
      passes.flatMap((pass) => pass.order.filter((bolt) => boltState(passState(states, pass.id), bolt).kind === is)),
    );
    return bolts.size > 0 ? [{ kind: 'bolts', is, step: step.say, bolts: [...bolts].sort((a, b) => a - b) }] : [];
  });
}

const stepsLeft = (job: Job): readonly Block[] =>
  job.plan.procedure.phases.flatMap((phase): readonly Block[] => {
    const left = phase.steps.filter((step) => !job.steps.has(step.id) && !isLeftOut(job, step)).length;
    return left > 0 ? [{ kind: 'steps', phase: phase.say, left }] : [];
  });

const timersRunning = (job: Job, now: Moment): readonly Block[] =>
  [...job.timers.values()].flatMap((timer): readonly Block[] => {
    const leftMs = timeLeft(timer, now);
    return leftMs > 0 ? [{ kind: 'timer', say: timer.say, leftMs }] : [];
  });
