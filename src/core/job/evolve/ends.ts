import type { Entry } from '../entry';
import type { Job, LooseEnd } from '../job';
import { startTimer } from '../timer';
import { stepDone } from './steps';

export const withEnd = (job: Job, id: string, end: LooseEnd): Job => ({ ...job, ends: new Map(job.ends).set(id, end) });

export function withoutEnds(job: Job, ids: readonly string[]): Job {
  if (ids.length === 0) return job;
  const ends = new Map(job.ends);
  for (const id of ids) ends.delete(id);
  return { ...job, ends };
}

export const endOpened = (job: Job, { end, what, blocks, why }: Entry & { readonly kind: 'end-opened' }): Job =>
  withEnd(job, end, { what, blocks, why });

/** A skipped step that was done after all counts with everything that it opens, closes and starts. */
export function endClosed(job: Job, entry: Entry & { readonly kind: 'end-closed' }): Job {
  const end = job.ends.get(entry.end);
  if (end?.why === 'skipped' && entry.how === 'refitted') return stepDone(job, entry.end, entry);
  const rest = withoutEnds(job, [entry.end]);
  return end?.why === 'wrench' ? { ...rest, dropped: new Set() } : rest;
}

export function withTimer(job: Job, id: string, ms: number, entry: Entry): Job {
  const say = job.plan.procedure.timers.get(id)?.say ?? id;
  return { ...job, timers: new Map(job.timers).set(id, startTimer(say, ms, entry)) };
}

/** Waits inside a tightening that begins again have to be waited once more. */
export function withoutTimers(job: Job, ids: readonly string[]): Job {
  if (!ids.some((id) => job.timers.has(id))) return job;
  const timers = new Map(job.timers);
  for (const id of ids) timers.delete(id);
  return { ...job, timers };
}
