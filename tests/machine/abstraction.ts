import { holdOf } from '../../src/core/job/hold';
import type { Job, LooseEnd } from '../../src/core/job/job';
import { cursorOf, passStatesOf, placeOf, workPlace } from '../../src/core/job/place';
import { nodeOf, type Place, stepIn } from '../../src/core/job/plan';
import { anyAngleSince, type BoltState, boltState, isComplete, passState } from '../../src/core/job/tightening';
import { isTimeAsked } from '../../src/core/job/time-gate';
import { MILESTONES } from '../../src/core/procedure/procedure';

/**
 * What a walk remembers of a state. Left out: the log, ids, times, counts of skipped steps, debts inside a pass, where
 * nothing depends on them, and interruptions: like a quiet spell, which is tried, they only have "done" asked back. Two jobs with the same abstraction must have the same commands and the same fate.
 */
export function abstraction(job: Job): string {
  const place = placeOf(job);
  const work = workPlace(job);
  return JSON.stringify([
    nodeOf(job.plan, place),
    nodeOf(job.plan, work),
    cursorOf(job),
    job.pending?.kind ?? '',
    isAside(job) ? [] : work.kind === 'pass' ? passNow(job, work) : debts(job, work),
    work.kind === 'step' ? [job.readings.get(work.step)?.size ?? 0, job.steps.get(work.step) ?? '', frontier(job)] : [],
    holdOf(job) !== undefined,
    isTimeAsked(job),
    answersThatMatter(job, work),
  ]);
}

/** The first step not dealt with: a skipped one is worked with later ones done. */
const frontier = (job: Job): string | undefined => job.plan.order.find((id) => !job.steps.has(id));

/** A pause, or a question whose answer has nothing to do with the fasteners: afterwards the work is as it was. */
const isAside = (job: Job): boolean =>
  job.paused || (job.pending !== null && !ABOUT_FASTENERS.has(job.pending.kind) && workPlace(job).kind === 'pass');

const ABOUT_FASTENERS: ReadonlySet<string> = new Set([
  'which-bolt',
  'out-of-order',
  'turned-or-not',
  'override-order',
  'held-bolt',
  'mark',
  'floor',
]);

/** The pass being worked by the kinds of its fasteners, what lies before it, and whether anything lies after it. */
function passNow(job: Job, place: Place & { readonly kind: 'pass' }): readonly unknown[] {
  const { passes } = stepIn(job.plan, place.step);
  const states = passStatesOf(job, place.step);
  const index = passes.findIndex((p) => p.id === place.pass);
  const pass = passes[index];
  if (!pass) return [];
  const state = passState(states, pass.id);
  const kinds = pass.order.map((n) => {
    return `${kindOf(boltState(state, n))} ${state.read.has(n)}`;
  });
  const later = passes.slice(index + 1).some((p) => isComplete(p, passState(states, p.id)));
  return [kinds.sort(), state.orderBroken, anyAngleSince(passes, states, index), later];
}

function kindOf(bolt: BoltState): string {
  if (bolt.kind === 'done') return bolt.inOrder ? 'done' : 'astray';
  if (bolt.kind === 'held') return `held ${bolt.fault === 'snapped'}`;
  return bolt.kind === 'unknown' ? `unknown ${bolt.had > 0}` : bolt.kind;
}

/** Whether anything is owed, lost, or in the way of the next milestone once the document is followed up to it. */
function debts(job: Job, place: Place): readonly boolean[] {
  const ends = [...job.ends];
  return [ends.length > 0, ends.some(([, e]) => e.why === 'dropped'), ends.some((e) => isInTheWay(job, place, e))];
}

function isInTheWay(job: Job, place: Place, [id, end]: readonly [string, LooseEnd]): boolean {
  const from = place.kind === 'step' || place.kind === 'pass' ? job.plan.order.indexOf(place.step) : Infinity;
  for (const ahead of job.plan.order.slice(from)) {
    const { step } = stepIn(job.plan, ahead);
    if (step.closes.includes(id)) return false;
    if (step.milestone) return MILESTONES.indexOf(end.blocks) <= MILESTONES.indexOf(step.milestone);
  }
  return true;
}

/** Answers given in this walk that a step still ahead depends on. */
function answersThatMatter(job: Job, place: Place): readonly (string | undefined)[] {
  if (place.kind !== 'step' && place.kind !== 'pass') return [];
  const ahead = job.plan.order.slice(job.plan.order.indexOf(place.step)).map((id) => stepIn(job.plan, id).step);
  const asked = new Set(ahead.flatMap((s) => (s.only ? [s.only.step] : [])));
  return [...asked].map((id) => job.answers.get(id));
}
