import { reply } from '../../phrasing/reply';
import { announce } from '../announce';
import { type Decision, does, refused, told } from '../decision';
import type { Moment } from '../entry';
import type { Job } from '../job';
import { passAt } from './at-pass';
import { done } from './step';

/** Before the first bolt: there is time to go through with it. */
export function haveTime(job: Job): Decision {
  const at = passAt(job);
  if (!at || !isBeforeBoltOne(job)) return refused(reply('not-here', {}));
  return does([{ kind: 'time-given', step: at.step.id }], [reply('time-taken', {})]);
}

/** Before the first bolt: there is not. The job waits where it is, with nothing begun. */
export function noTime(job: Job): Decision {
  if (!isBeforeBoltOne(job)) return refused(reply('not-here', {}));
  return does([{ kind: 'paused', why: 'held' }], [reply('no-time', {})]);
}

/** At the beginning of a tightening, with no fastener of it touched. */
export function isBeforeBoltOne(job: Job): boolean {
  const at = passAt(job);
  return at !== undefined && at.pass === at.passes[0] && at.part !== 'sort' && at.state.bolts.size === 0;
}

/** "Start the next pass" begins nothing by itself: it tells what the pass waits for. A wait that is over is ended. */
export function nextPassReady(job: Job, now: Moment): Decision {
  const at = passAt(job);
  if (!at) return refused(reply('not-here', {}));
  if (at.part === 'wait') return done(job, now);
  return told(...announce(job, now));
}
