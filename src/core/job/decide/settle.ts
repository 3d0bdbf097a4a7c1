import { type Reply, reply, text } from '../../phrasing/reply';
import { announce } from '../announce';
import type { Decision } from '../decision';
import type { EntryBody, Moment } from '../entry';
import { evolve } from '../evolve';
import type { Job } from '../job';
import { blockersOf } from '../milestone';
import { passStatesOf, placeOf, workPlace } from '../place';
import { nodeOf, passIn, stepIn } from '../plan';
import { isComplete, passState } from '../tightening';

/**
 * Completes a decision with what follows from it by itself: a tightening whose last pass is complete is done,
 * a wait that has been reached starts its timer, and a new place is announced after the confirmation.
 */
export function settle(job: Job, decision: Decision, now: Moment): Decision {
  if (decision.entries.length === 0) return decision;
  const entries: EntryBody[] = [...decision.entries];
  let next = after(job, entries, now);
  for (let more = consequences(next); more.length > 0; more = consequences(next)) {
    entries.push(...more);
    next = after(next, more, now);
  }
  const announces = decision.verdict === 'done' && !next.paused && (isElsewhere(job, next) || isFreed(job, next));
  const replies = announces
    ? saidOnce([...passesCompleted(job, next), ...decision.replies, ...announce(next, now)])
    : decision.replies;
  return { ...decision, entries, replies };
}

/** The job as it would be after these bodies, without writing them: seq and who are placeholders nothing here reads. */
export function after(job: Job, bodies: readonly EntryBody[], now: Moment): Job {
  let seq = job.last?.seq ?? 0;
  return bodies.reduce((j: Job, body) => evolve(j, { ...body, ...now, seq: ++seq, who: '' }), job);
}

/** An answer that is also the first thing to say at the new place is said once. */
const saidOnce = (replies: readonly Reply[]): readonly Reply[] =>
  replies.filter((r, i) => JSON.stringify(r) !== JSON.stringify(replies[i - 1]));

const isElsewhere = (before: Job, after: Job): boolean =>
  nodeOf(before.plan, placeOf(before)) !== nodeOf(after.plan, placeOf(after));

/** What was in the way of this step is gone: only now is it said what there is to do. */
function isFreed(before: Job, after: Job): boolean {
  const place = placeOf(after);
  if (place.kind !== 'step') return false;
  const { step } = stepIn(after.plan, place.step);
  return blockersOf(before, step).length > 0 && blockersOf(after, step).length === 0;
}

function consequences(job: Job): readonly EntryBody[] {
  if (job.status !== 'open') return [];
  const place = workPlace(job);
  if (place.kind === 'step') {
    const { step, passes } = stepIn(job.plan, place.step);
    if (passes.length > 0)
      return step.question || blockersOf(job, step).length > 0 ? [] : [{ kind: 'step-done', step: step.id }];
    return step.kind === 'wait' ? timerStart(job, step.timer) : [];
  }
  if (place.kind === 'pass' && place.part === 'wait') {
    const pass = passIn(job.plan, place.step, place.pass);
    return pass.kind === 'wait' ? timerStart(job, pass.timer) : [];
  }
  return [];
}

function timerStart(job: Job, id: string): readonly EntryBody[] {
  const spec = job.plan.procedure.timers.get(id);
  if (!spec || job.timers.has(id)) return [];
  return [{ kind: 'timer-started', timer: id, ms: spec.minutes * 60_000 }];
}

/** Said once for each pass that this decision finished, before the next thing is announced. */
function passesCompleted(before: Job, after: Job): readonly Reply[] {
  const place = workPlace(before);
  if (place.kind !== 'pass') return [];
  const { step } = stepIn(before.plan, place.step);
  const pass = passIn(before.plan, place.step, place.pass);
  const finished = isComplete(pass, passState(passStatesOf(after, step.id), pass.id));
  if (!finished || isComplete(pass, passState(passStatesOf(before, step.id), pass.id))) return [];
  return [
    reply('pass-complete', { pass: text(pass.say) }),
    ...(after.steps.has(step.id) ? [reply('tightening-complete', {})] : []),
  ];
}
