import type { Entry, Moment } from '../../src/core/job/entry';
import { evolve } from '../../src/core/job/evolve';
import type { Job } from '../../src/core/job/job';
import { isLeftOut, passStatesOf } from '../../src/core/job/place';
import { passIn, stepIn } from '../../src/core/job/plan';
import { boltState, needsReading, passState } from '../../src/core/job/tightening';
import { timeLeft } from '../../src/core/job/timer';
import { MILESTONES } from '../../src/core/procedure/procedure';

/** What is still owed in a job, loose ends included. Read off the log's fold without asking the deciding code. */
export const owed = (job: Job): readonly string[] => [
  ...[...job.ends.values()].map((e) => `end ${e.what}`),
  ...job.plan.order.flatMap((id) => stepOwed(job, id)),
];

/** Steps, read-backs, passes and orders that are neither done nor left out nor put off as a loose end. */
export const workOwed = (job: Job): readonly string[] => job.plan.order.flatMap((id) => stepOwed(job, id));

function stepOwed(job: Job, id: string): readonly string[] {
  const { step } = stepIn(job.plan, id);
  if (isLeftOut(job, step) || job.steps.get(id) === 'skipped') return [];
  return [...(job.steps.has(id) ? [] : [`step ${id}`]), ...insideOwed(job, id)];
}

/** What is missing inside a step, whether or not it is called done. */
function insideOwed(job: Job, id: string): readonly string[] {
  const { step, passes } = stepIn(job.plan, id);
  const missing = step.kind === 'measure' ? step.readings.filter((r) => !job.readings.get(id)?.has(r.id)) : [];
  return [
    ...(step.question && !job.answers.has(id) ? [`read-back ${id}`] : []),
    ...missing.map((r) => `reading ${id}/${r.id}`),
    ...passes.flatMap((pass) => {
      const state = passState(passStatesOf(job, id), pass.id);
      const open = pass.order.filter((n) => boltState(state, n).kind !== 'done');
      return [
        ...(pass.kind === 'wait' && !state.waited ? [`wait ${id}/${pass.id}`] : []),
        ...(open.length > 0 ? [`bolts ${open} of ${id}/${pass.id}`] : []),
        ...pass.order.flatMap((n) => (needsReading(pass, state, n) ? [`torque of ${n} of ${id}/${pass.id}`] : [])),
        ...(state.orderBroken ? [`order of ${id}/${pass.id}`] : []),
      ];
    }),
  ];
}

/** Whether closing may be asked for now, from the fold alone: nothing owed, no bolt in doubt, no wait, no other question. */
export const mayClose = (job: Job, now: Moment): boolean =>
  owed(job).length === 0 &&
  running(job, [...job.timers.keys()], now).length === 0 &&
  (job.pending === null || job.pending.kind === 'close-job');

/** Entries that no path may ever write, whatever the replies said, judged one by one as they are folded in. */
export function forbidden(before: Job, entries: readonly Entry[]): readonly string[] {
  let job = before;
  return entries.flatMap((entry) => {
    const found = forbiddenIn(job, entry);
    job = evolve(job, entry);
    return found;
  });
}

function forbiddenIn(job: Job, e: Entry): readonly string[] {
  switch (e.kind) {
    case 'bolt-done': {
      const state = boltState(passState(passStatesOf(job, e.step), e.pass), e.bolt).kind;
      // Slackening once more what may be slack already does no harm.
      const isHarmless = state === 'unknown' && passIn(job.plan, e.step, e.pass).kind === 'slacken';
      const pass = passIn(job.plan, e.step, e.pass);
      // Out of order it is the truth, and its torque is owed before the pass can end.
      if (e.inOrder && needsReading(pass, passState(passStatesOf(job, e.step), e.pass), e.bolt))
        return ['bolt done with its torque unread'];
      const isWrong = state === 'held' || state === 'unknown' || state === 'done';
      return isWrong && !isHarmless ? [`bolt done while ${state}`] : [];
    }
    case 'step-done':
      return stepDoneTooEarly(job, e);
    case 'closed':
      return [...owed(job), ...running(job, [...job.timers.keys()], e)].map((what) => `closed with ${what}`);
    default:
      return [];
  }
}

function stepDoneTooEarly(job: Job, e: Entry & { readonly kind: 'step-done' }): readonly string[] {
  const { step } = stepIn(job.plan, e.step);
  const reached = step.milestone ? MILESTONES.indexOf(step.milestone) : -1;
  const inTheWay = [...job.ends].filter(
    ([id, end]) => !step.closes.includes(id) && MILESTONES.indexOf(end.blocks) <= reached,
  );
  const waits = [...step.needsTimers, ...(step.kind === 'wait' ? [step.timer] : [])];
  return [
    ...insideOwed(job, e.step),
    ...inTheWay.map(([id]) => `end ${id} before ${step.milestone}`),
    ...running(job, waits, e),
  ].map((what) => `done with ${what}`);
}

const running = (job: Job, timers: readonly string[], now: Moment): readonly string[] =>
  timers.flatMap((id) => {
    const timer = job.timers.get(id);
    return timer && timeLeft(timer, now) === 0 ? [] : [`timer ${id}`];
  });
