import { assertNever } from '../result';
import { type Entry, isTalk } from './entry';
import {
  boltDone,
  boltFault,
  boltProved,
  boltReplaced,
  boltTurned,
  boltUnknown,
  inPass,
  passRepeated,
  slackened,
  torqueRead,
} from './evolve/bolts';
import { endClosed, endOpened, withTimer } from './evolve/ends';
import { pastAfter } from './evolve/past';
import { opened, undone } from './evolve/session';
import { stepDone, stepSkipped } from './evolve/steps';
import { adapterTo, wrenchChosen, wrenchDropped } from './evolve/wrench';
import { type Job, newJob } from './job';
import type { Plan } from './plan';

/** The job as the whole log tells it. Entries that were taken back are left out. */
export const fold = (plan: Plan, entries: readonly Entry[]): Job => entries.reduce(evolve, newJob(plan));

/** The job after one more entry. Pure: the same log always gives the same job. */
export function evolve(job: Job, entry: Entry): Job {
  if (isTalk(entry)) return job.last === null ? job : { ...job, last: entry };
  const next = entry.kind === 'undone' ? undone(job, entry, apply) : apply(job, entry);
  return {
    ...next,
    past: entry.kind === 'undone' ? next.past : pastAfter(job, entry, next, apply),
    entries: [...job.entries, entry],
    last: entry,
    attempt: SAME_MEANING.has(entry.kind) ? job.attempt : job.attempt + 1,
  };
}

/** Entries after which every word means what it meant before. They may come in while somebody is speaking. */
const SAME_MEANING: ReadonlySet<Entry['kind']> = new Set(['noted', 'pictured', 'listed', 'checked-by', 'terse-set']);

function apply(job: Job, entry: Entry): Job {
  switch (entry.kind) {
    case 'job-started':
      return { ...job, id: entry.job, status: 'open', people: entry.people };
    case 'session-opened':
      return opened(job, entry);
    case 'paused':
    case 'handed-over':
      return { ...job, paused: true, pending: null };
    case 'came-back':
      return { ...job, paused: false, interrupted: true, streak: 0, pending: null };
    case 'wrench-chosen':
      return wrenchChosen(job, entry);
    case 'wrenches-owned':
      return { ...job, owned: entry.wrenches };
    case 'wrench-dropped':
      return wrenchDropped(job, entry);
    case 'adapter-on':
      return adapterTo(job, { millimetres: entry.millimetres, degrees: entry.degrees });
    case 'adapter-off':
      return adapterTo(job, null);
    case 'time-given':
      return { ...job, timeGiven: new Set(job.timeGiven).add(entry.step) };
    case 'terse-set':
      return { ...job, terse: entry.terse };
    case 'step-done':
      return worked(stepDone(job, entry.step, entry), entry);
    case 'step-skipped':
      return worked(stepSkipped(job, entry.step), entry);
    case 'question-answered':
      return entry.right ? worked({ ...job, answers: new Map(job.answers).set(entry.step, entry.answer) }, entry) : job;
    case 'setting-confirmed':
      // Another pass, another rhythm: the first echoes of it are whole again.
      return { ...worked(begun(inPass(job, entry, { setting: entry.value }), entry.step), entry), streak: 0 };
    case 'heads-marked':
      return worked(inPass(job, entry, { marked: true }), entry);
    case 'bolt-done':
      return {
        ...worked(begun(boltDone(job, entry, entry.inOrder), entry.step), entry),
        streak: job.interrupted || !entry.inOrder ? 0 : job.streak + 1,
      };
    case 'bolt-turned':
      return worked(boltTurned(job, entry, entry.degrees), entry);
    case 'torque-read':
      // A reading names no bolt, so it does not tell where the work is: neither an interruption nor a quiet spell ends.
      return { ...torqueRead(job, entry), pending: null };
    case 'bolt-fault':
      return boltFault(job, entry);
    case 'bolt-unknown':
      return { ...boltUnknown(job, entry, entry.why), streak: 0, pending: null };
    case 'bolt-proved':
    case 'swing-proved':
    case 'bolt-settled':
      return worked(boltProved(job, entry), entry);
    case 'bolt-replaced':
      return { ...boltReplaced(job, entry), pending: null };
    case 'order-broken':
      return { ...inPass(job, entry, { orderBroken: true }), streak: 0 };
    case 'order-accepted':
      return worked(inPass(job, entry, { orderBroken: false }), entry);
    case 'pass-repeated':
      return passRepeated(job, entry);
    case 'pass-waited':
      return worked(inPass(job, entry, { waited: true }), entry);
    case 'all-slackened':
      return slackened(job, entry.step);
    case 'measured': {
      const { value, unit, within } = entry;
      const given = new Map(job.readings.get(entry.step)).set(entry.reading, { value, unit, within });
      return worked({ ...job, readings: new Map(job.readings).set(entry.step, given) }, entry);
    }
    case 'end-opened':
      return endOpened(job, entry);
    case 'end-closed':
      return worked(endClosed(job, entry), entry);
    case 'timer-started':
      return withTimer(job, entry.timer, entry.ms, entry);
    case 'asked':
      return { ...job, pending: entry.question };
    case 'question-dropped':
      return { ...job, pending: null };
    case 'listed':
      return { ...job, list: [...job.list, entry.part] };
    case 'closed':
      return { ...job, status: 'closed', pending: null };
    case 'marks-read':
    case 'checked-by':
    case 'noted':
    case 'pictured':
    case 'undone':
    case 'heard':
    case 'rejected':
    case 'said':
      return job;
    default:
      return assertNever(entry);
  }
}

const begun = (job: Job, step: string): Job =>
  job.begun.has(step) ? job : { ...job, begun: new Set(job.begun).add(step) };

/** After real work: no question is open, the interruption is over, and the clock of the last work starts again. */
const worked = (job: Job, entry: Entry): Job => ({
  ...job,
  pending: null,
  interrupted: false,
  lastWork: { mono: entry.mono, session: entry.session },
});
