import type { Entry } from '../entry';
import type { Job } from '../job';

/** The job as it stood after so many of its state entries, those left out that had been taken back by then. */
type Mark = { readonly count: number; readonly seq: number; readonly job: Job };

/**
 * What is kept of a job's past, so that taking something back need not fold the whole log again. None of it says anything
 * that the log does not: with it or without it the same log gives the same job.
 */
export type Past = {
  /** Some states of the way here, in order. */
  readonly marks: readonly Mark[];
  /** The fold alone, once the job is more than that: what was in doubt before something was taken back stays in doubt. */
  readonly alone: Job | null;
  /** The last entry before each session, talk included: until then its timers have run. By the entry that opened it. */
  readonly before: ReadonlyMap<number, Entry | null>;
};

export const NO_PAST: Past = { marks: [], alone: null, before: new Map() };

/** Between two marks; a state shares nearly everything with the one before, so many of them weigh little. */
const EVERY = 32;

type Apply = (job: Job, entry: Entry) => Job;

/** A state of the fold alone, without what only the job itself has. */
const bare = (job: Job, last: Entry): Job => ({
  ...job,
  ...{ entries: [], undone: new Set(), attempt: 0, past: NO_PAST, last },
});

/** The fold of entries onto a state, each session opened after the entry that really came before it. */
export function foldOnto(from: Job, entries: readonly Entry[], { before }: Past, apply: Apply): Job {
  let job = from;
  for (const entry of entries) {
    const last = before.get(entry.seq);
    job = bare(apply(last === undefined ? job : { ...job, last }, entry), entry);
  }
  return job;
}

/** The last mark before an entry, and the marks up to it: those after it hold what is being taken back. */
export function marksBefore({ marks }: Past, seq: number): { readonly kept: readonly Mark[]; readonly mark?: Mark } {
  const kept = marks.filter((mark) => mark.seq < seq);
  const mark = kept.at(-1);
  return mark ? { kept, mark } : { kept };
}

/** The past after one more entry that takes nothing back. `next` is the job with that entry in it. */
export function pastAfter(job: Job, entry: Entry, next: Job, apply: Apply): Past {
  const { past } = job;
  const before = entry.kind === 'session-opened' ? new Map(past.before).set(entry.seq, job.last) : past.before;
  const alone = past.alone && bare(apply({ ...past.alone, last: job.last }, entry), entry);
  const count = job.entries.length + 1;
  const isDue = count - (past.marks.at(-1)?.count ?? 0) >= EVERY;
  const marks = isDue ? [...past.marks, { count, seq: entry.seq, job: alone ?? bare(next, entry) }] : past.marks;
  return { marks, alone, before };
}
