import type { Job } from './job';
import { cursorOf, placeOf } from './place';
import { nodeOf } from './plan';

/**
 * A key of what words mean now: job, place, cursor, attempt and open question. Time passing does not change it,
 * so an answer carries it and is dropped when it no longer matches.
 */
export function revisionOf(job: Job): string {
  const place = placeOf(job);
  return [job.id, nodeOf(job.plan, place), cursorOf(job), job.attempt, job.ends.size, job.pending?.kind ?? ''].join(
    '/',
  );
}
