import { reply } from '../../phrasing/reply';
import { blocksTold } from '../announce/blocks';
import { blocksOf } from '../blocks';
import { asks, type Decision, does, refused } from '../decision';
import type { Moment } from '../entry';
import type { Job } from '../job';

/** A job closes only when nothing blocks it; whatever does is listed, from wherever it is asked. */
export const closeJob = (job: Job, now: Moment): Decision =>
  notYet(job, now) ?? asks([{ kind: 'asked', question: { kind: 'close-job' } }], reply('confirm-close', {}));

/** Looked at once more on the confirmation: what was true when it was asked may not be true any longer. */
export const confirmClose = (job: Job, now: Moment): Decision => notYet(job, now) ?? does([{ kind: 'closed' }], []);

function notYet(job: Job, now: Moment): Decision | undefined {
  const blocks = blocksOf(job, now);
  return blocks.length > 0 ? refused(...blocksTold(blocks)) : undefined;
}
