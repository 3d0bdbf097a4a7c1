import { assertNever } from '../result';
import { type Entry, isTalk } from './entry';
import { type Job, type LooseEnd, newJob } from './job';
import { passStatesOf, workPlace } from './place';
import { type Plan, passIn, stepIn } from './plan';
import { expectedBolt, type PassStates, passState, reopened, sinceSlacken, withBolt, withPass } from './tightening';
import { carryOver, startTimer } from './timer';

/** The job as the whole log tells it. Entries that were taken back are left out. */
export const fold = (plan: Plan, entries: readonly Entry[]): Job => entries.reduce(evolve, newJob(plan));

/** The job after one more entry. Pure: the same log always gives the same job. */
export function evolve(job: Job, entry: Entry): Job {
  if (isTalk(entry)) return job.last === null ? job : { ...job, last: entry };
  if (entry.kind === 'undone') return foldWithout(job, entry);
  const next = apply(job, entry);
  return { ...next, entries: [...job.entries, entry], last: entry };
}

function foldWithout(job: Job, entry: Entry & { readonly kind: 'undone' }): Job {
  const undone = new Set(job.undone).add(entry.target);
  const kept = job.entries.filter((e) => !undone.has(e.seq));
  const again = kept.reduce((j: Job, e) => ({ ...apply(j, e), last: e }), newJob(job.plan));
  return {
    ...again,
    entries: [...job.entries, entry],
    undone,
    last: entry,
    pending: null,
    streak: 0,
    attempt: job.attempt + 1,
    interrupted: job.interrupted,
  };
}

function apply(job: Job, entry: Entry): Job {
  switch (entry.kind) {
    case 'job-started':
      return { ...job, id: entry.job, status: 'open' };
    case 'session-opened':
      return sessionOpened(job, entry);
    case 'paused':
      return { ...job, paused: true, pending: null };
    case 'came-back':
      return { ...job, paused: false, interrupted: true, streak: 0, pending: null };
    case 'step-done':
      return worked(stepDone(job, entry.step, entry), entry);
    case 'step-skipped':
      return worked(stepSkipped(job, entry.step), entry);
    case 'question-answered':
      return entry.right
        ? worked({ ...job, answers: new Map(job.answers).set(entry.step, entry.answer) }, entry)
        : { ...job, attempt: job.attempt + 1 };
    case 'setting-confirmed':
      return worked(
        inPasses(job, entry.step, (s) => withPass(s, entry.pass, { setting: entry.value })),
        entry,
      );
    case 'heads-marked':
      return worked(
        inPasses(job, entry.step, (s) => withPass(s, entry.pass, { marked: true })),
        entry,
      );
    case 'bolt-done':
      return {
        ...worked(inBolt(job, entry, { kind: 'done', inOrder: entry.inOrder }), entry),
        streak: job.interrupted ? 0 : job.streak + 1,
      };
    case 'bolt-turned':
      return worked(inBolt(job, entry, { kind: 'partial', degrees: entry.degrees }), entry);
    case 'bolt-fault':
      return boltFault(job, entry);
    case 'bolt-unknown':
      return { ...inBolt(job, entry, { kind: 'unknown', why: entry.why }), streak: 0, attempt: job.attempt + 1 };
    case 'bolt-proved':
      return worked(
        inBolt(job, entry, entry.verdict === 'done' ? { kind: 'done', inOrder: true } : { kind: 'open' }),
        entry,
      );
    case 'bolt-replaced':
      return { ...recover(job, entry, entry.action), attempt: job.attempt + 1, pending: null };
    case 'order-broken':
      return { ...inPasses(job, entry.step, (s) => withPass(s, entry.pass, { orderBroken: true })), streak: 0 };
    case 'order-accepted':
      return worked(
        inPasses(job, entry.step, (s) => withPass(s, entry.pass, { orderBroken: false })),
        entry,
      );
    case 'pass-repeated':
      return restart(job, entry.step, entry.pass, 'repeat-pass');
    case 'pass-waited':
      return worked(
        inPasses(job, entry.step, (s) => withPass(s, entry.pass, { waited: true })),
        entry,
      );
    case 'all-slackened':
      return restart(job, entry.step, '', 'restart-all');
    case 'measured': {
      const given = new Map(job.readings.get(entry.step)).set(entry.reading, {
        value: entry.value,
        unit: entry.unit,
        within: entry.within,
      });
      return worked({ ...job, readings: new Map(job.readings).set(entry.step, given) }, entry);
    }
    case 'end-opened':
      return withEnd(job, entry.end, { what: entry.what, blocks: entry.blocks, why: entry.why });
    case 'end-closed':
      return worked(withoutEnds(job, [entry.end]), entry);
    case 'timer-started':
      return withTimer(job, entry.timer, entry.ms, entry);
    case 'asked':
      return { ...job, pending: entry.question };
    case 'question-dropped':
      return { ...job, pending: null, attempt: job.attempt + 1 };
    case 'adapter-on':
      return { ...job, adapter: entry.millimetres, pending: null };
    case 'adapter-off':
      return { ...job, adapter: null, pending: null };
    case 'wrench-dropped':
      return { ...job, wrenchDropped: true };
    case 'listed':
      return { ...job, list: [...job.list, entry.part] };
    case 'checked-by':
    case 'noted':
    case 'pictured':
      return job;
    case 'handed-over':
      return { ...job, paused: true, pending: null };
    case 'closed':
      return { ...job, status: 'closed', pending: null };
    case 'undone':
    case 'heard':
    case 'rejected':
    case 'said':
      return job;
    default:
      return assertNever(entry);
  }
}

/** After real work: no question is open, the interruption is over, and the clock of the last work starts again. */
const worked = (job: Job, entry: Entry): Job => ({
  ...job,
  pending: null,
  interrupted: false,
  lastWork: { mono: entry.mono, session: entry.session },
});

const inPasses = (job: Job, step: string, change: (states: PassStates) => PassStates): Job => ({
  ...job,
  tightening: new Map(job.tightening).set(step, change(passStatesOf(job, step))),
});

type AtBolt = { readonly step: string; readonly pass: string; readonly bolt: number };

const inBolt = (job: Job, at: AtBolt, to: Parameters<typeof withBolt>[3]): Job =>
  inPasses(job, at.step, (s) => withBolt(s, at.pass, at.bolt, to));

const withEnd = (job: Job, id: string, end: LooseEnd): Job => ({ ...job, ends: new Map(job.ends).set(id, end) });

function withoutEnds(job: Job, ids: readonly string[]): Job {
  if (ids.length === 0) return job;
  const ends = new Map(job.ends);
  for (const id of ids) ends.delete(id);
  const steps = new Map(job.steps);
  for (const id of ids) if (steps.get(id) === 'skipped') steps.set(id, 'done');
  return { ...job, ends, steps };
}

function withTimer(job: Job, id: string, ms: number, entry: Entry): Job {
  const say = job.plan.procedure.timers.get(id)?.say ?? id;
  return { ...job, timers: new Map(job.timers).set(id, startTimer(say, ms, entry)) };
}

function stepDone(job: Job, id: string, entry: Entry): Job {
  const { step } = stepIn(job.plan, id);
  let next: Job = withoutEnds({ ...job, steps: new Map(job.steps).set(id, 'done') }, step.closes);
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
function stepSkipped(job: Job, id: string): Job {
  const order = job.plan.order;
  const later = order.slice(order.indexOf(id)).map((s) => stepIn(job.plan, s).step.milestone);
  const blocks = later.find((m) => m !== undefined) ?? 'hand-back';
  const { step } = stepIn(job.plan, id);
  return withEnd({ ...job, steps: new Map(job.steps).set(id, 'skipped') }, id, {
    what: step.say,
    blocks,
    why: 'skipped',
  });
}

function boltFault(job: Job, entry: Entry & { readonly kind: 'bolt-fault' }): Job {
  if (entry.action === 'note') return job;
  return { ...recover(job, entry, entry.action, entry.fault), attempt: job.attempt + 1, streak: 0 };
}

type Action = (Entry & { readonly kind: 'bolt-fault' })['action'];
type Fault = (Entry & { readonly kind: 'bolt-fault' })['fault'];

/** What the document says happens to a fastener after a fault; `hold` blocks until someone settles it. */
function recover(job: Job, at: AtBolt, action: Action, fault: Fault = 'snapped'): Job {
  switch (action) {
    case 'note':
      return job;
    case 'hold':
      return inBolt(job, at, { kind: 'held', fault });
    case 'redo-bolt':
      return inBolt(job, at, { kind: 'open' });
    case 'accept':
      return inBolt(job, at, { kind: 'done', inOrder: true });
    case 'restart-bolt': {
      const { passes } = stepIn(job.plan, at.step);
      const index = passes.findIndex((p) => p.id === at.pass);
      const from = sinceSlacken(passes, index);
      return inPasses(job, at.step, (s) => reopened(passes, s, from, index, at.bolt));
    }
    case 'restart-all':
      // Blocked until the person reports that all are slack: the command for it starts every pass anew.
      return inBolt(job, at, { kind: 'held', fault });
    case 'repeat-pass':
      return restart(job, at.step, at.pass, 'repeat-pass');
    default:
      return assertNever(action);
  }
}

function restart(job: Job, stepId: string, passId: string, how: 'repeat-pass' | 'restart-all'): Job {
  const { passes } = stepIn(job.plan, stepId);
  const index = passes.findIndex((p) => p.id === passId);
  const [from, to] = how === 'repeat-pass' ? [index, index] : [0, passes.length - 1];
  return {
    ...inPasses(job, stepId, (s) => reopened(passes, s, from, to)),
    streak: 0,
    attempt: job.attempt + 1,
    pending: null,
  };
}

/** Opening a session ends questions, breaks the rhythm and carries every timer over. */
function sessionOpened(job: Job, entry: Entry): Job {
  const last = job.last;
  const timers = new Map([...job.timers].map(([id, t]) => [id, last ? carryOver(t, last, entry) : t] as const));
  const interrupted = last !== null && last.kind !== 'job-started';
  return { ...job, timers, pending: null, interrupted, streak: 0, attempt: job.attempt + 1 };
}

/** The fastener at the cursor when an angle pass is being worked: the one an interruption leaves in doubt. */
export function boltInDoubt(job: Job): AtBolt | undefined {
  const place = workPlace(job);
  if (place.kind !== 'pass' || place.part !== 'work') return undefined;
  const pass = passIn(job.plan, place.step, place.pass);
  if (pass.kind !== 'angle') return undefined;
  const bolt = expectedBolt(pass, passState(passStatesOf(job, place.step), pass.id));
  return bolt === undefined ? undefined : { step: place.step, pass: pass.id, bolt };
}
