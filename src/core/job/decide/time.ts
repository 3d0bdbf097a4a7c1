import { reply } from '../../phrasing/reply';
import { announce } from '../announce';
import { passAnnounced } from '../announce/pass';
import { type Decision, does, refused, told } from '../decision';
import type { EntryBody, Moment } from '../entry';
import type { Job } from '../job';
import { workPlace } from '../place';
import { isBeforeBoltOne, isTimeAsked } from '../time-gate';
import { passAt } from './at-pass';
import { after } from './settle';
import { done } from './step';

/** Before the first bolt: there is time to go through with it. Only now is it told what to set. */
export function haveTime(job: Job, now: Moment): Decision {
  const place = workPlace(job);
  if (place.kind !== 'pass' || !isTimeAsked(job)) return refused(reply('not-here', {}));
  const entry: EntryBody = { kind: 'time-given', step: place.step };
  return does([entry], [reply('time-taken', {}), ...passAnnounced(after(job, [entry], now), place, now, [])]);
}

/** Before the first bolt: there is not. The job waits where it is, with nothing begun. */
export function noTime(job: Job): Decision {
  if (!isBeforeBoltOne(job)) return refused(reply('not-here', {}));
  return does([{ kind: 'paused', why: 'held' }], [reply('no-time', {})]);
}

/** "Start the next pass" begins nothing by itself: it tells what the pass waits for. A wait that is over is ended. */
export function nextPassReady(job: Job, now: Moment): Decision {
  const at = passAt(job);
  if (!at) return refused(reply('not-here', {}));
  if (at.part === 'wait') return done(job, now);
  return told(...announce(job, now));
}
