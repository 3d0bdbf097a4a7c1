import { type Reply, reply } from '../phrasing/reply';
import { openEnds } from './announce/ends';
import { announcePass } from './announce/pass';
import { announceStep } from './announce/step';
import type { Moment } from './entry';
import type { Job } from './job';
import { placeOf } from './place';
import { stepIn } from './plan';

export { patternOf, whereIs } from './announce/fastener';

/** What is said on arriving at the place the job is at: hazards first, then the action, then the value. */
export function announce(job: Job, now: Moment): readonly Reply[] {
  const place = placeOf(job);
  switch (place.kind) {
    case 'step':
      return announceStep(job, stepIn(job.plan, place.step).step, now);
    case 'pass':
      return announcePass(job, place, now);
    case 'paused':
      return [reply('paused', {})];
    case 'closing':
      return job.ends.size > 0
        ? [reply('closing-open', { ends: openEnds(job.ends.values()) })]
        : [reply('closing-ready', {})];
    case 'closed':
      return [reply('job-closed', {})];
  }
}
