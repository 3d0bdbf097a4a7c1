import { duration, reply, text } from '../../phrasing/reply';
import { announce } from '../announce';
import { openEnds } from '../announce/ends';
import { asks, type Decision, does, refused } from '../decision';
import type { Moment } from '../entry';
import type { Job } from '../job';
import { workPlace } from '../place';
import { timeLeft } from '../timer';

/** A job closes only from its end, with nothing open and no wait still running. */
export const closeJob = (job: Job, now: Moment): Decision =>
  notYet(job, now) ?? asks([{ kind: 'asked', question: { kind: 'close-job' } }], reply('confirm-close', {}));

/** Looked at once more on the confirmation: what was true when it was asked may not be true any longer. */
export const confirmClose = (job: Job, now: Moment): Decision => notYet(job, now) ?? does([{ kind: 'closed' }], []);

function notYet(job: Job, now: Moment): Decision | undefined {
  if (workPlace(job).kind !== 'closing') return refused(reply('close-too-early', {}), ...announce(job, now));
  if (job.ends.size > 0) return refused(reply('close-refused', { ends: openEnds(job.ends.values()) }));
  const running = [...job.timers.values()].find((timer) => timeLeft(timer, now) > 0);
  if (!running) return undefined;
  return refused(reply('timer-runs', { timer: text(running.say), left: duration(timeLeft(running, now)) }));
}
