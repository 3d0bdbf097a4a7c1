import { count, reply } from '../../phrasing/reply';
import { assertNever } from '../../result';
import { type Command, isAtPorch, type PorchRule, type RuleName } from '../command';
import { type Decision, refused } from '../decision';
import type { Moment } from '../entry';
import { holdOf } from '../hold';
import type { Job } from '../job';
import { isTimeAsked } from '../time-gate';
import { allMarked, pastBy, soFar } from './angle';
import { type AskingRule, isAsking, tell } from './asking';
import { boltDone, boltsDone, clickedOrDone } from './bolt';
import { useWrench } from './choose-wrench';
import { closeJob } from './close';
import { type ControlRule, control, isControl } from './control';
import { markAt, noMark, notSure, turned } from './doubt';
import { cameOff, checkedBy, closeEnd, droppedOne, foundIt, putOnList } from './ends';
import { boltReplaced, clickedTwice, fault, outOfOrder } from './fault';
import { torqueRead } from './floor';
import { leave } from './leaving';
import { cancelPending, confirmPending } from './pending';
import { goAhead, repeatPass, signOff, skipStep, slackenAll } from './permission';
import { measured, measuredAt } from './reading';
import { settle } from './settle';
import { answer, done, startTimer } from './step';
import { haveTime, nextPassReady, noTime } from './time';
import { takeBack } from './undo';
import { adapterOff, adapterOn, droppedWrench, setAt } from './wrench';

/**
 * What a command does to a job at a moment: entries to be written before anything is confirmed, and what to say.
 * Total: every command in every state gives a decision, and one that does not belong here is refused, never guessed.
 */
export function decide(job: Job, c: Command, now: Moment): Decision {
  const { rule } = c;
  if (isControl(rule)) return settle(job, control(job, { ...c, rule }), now);
  if (isAsking(rule)) return tell(job, { ...c, rule }, now);
  if (isAtPorch(rule) || job.status !== 'open') return refused(reply('not-here', {}));
  if (job.paused) return refused(reply('paused', {}));
  const hold = holdOf(job);
  if (hold && !WHILE_ON_HOLD.has(rule)) return refused(reply('job-on-hold', { bolt: count(hold.bolt) }));
  if (isTimeAsked(job) && WORK_ON_BOLTS.has(rule)) return refused(reply('time-first', {}));
  return settle(job, work(job, { ...c, rule }, now), now);
}

type WorkRule = Exclude<RuleName, ControlRule | AskingRule | PorchRule>;

/** What waits until it is said that there is time for the whole tightening. */
const WORK_ON_BOLTS: ReadonlySet<RuleName> = new Set([
  'set-at',
  'all-marked',
  'done',
  'clicked',
  'bolt-done',
  'bolts-done',
  'so-far',
  'past-by',
  'next-pass-ready',
]);

/** With a bolt broken, nothing but what settles it, and what has nothing to do with the engine. */
export const WHILE_ON_HOLD: ReadonlySet<RuleName> = new Set([
  'slacken-all',
  'bolt-replaced',
  'go-ahead-anyway',
  'take-back',
  'confirm',
  'cancel',
  'dropped-one',
  'found-it',
  'add-to-list',
  'checked-by',
  'hand-over',
  'close-job',
]);

function work(job: Job, c: Command<WorkRule>, now: Moment): Decision {
  switch (c.rule) {
    case 'done':
    case 'clicked':
      return clickedOrDone(job, c, now) ?? done(job, now);
    case 'bolt-done':
      return boltDone(job, c, now);
    case 'bolts-done':
      return boltsDone(job, c);
    case 'so-far':
      return soFar(job, c, now);
    case 'past-by':
      return pastBy(job, c, now);
    case 'all-marked':
      return allMarked(job);
    case 'set-at':
      return setAt(job, c);
    case 'use-wrench':
    case 'use-size':
      return useWrench(job, c, now);
    case 'answer':
      return answer(job, c, now);
    case 'measured':
      return torqueRead(job, c) ?? measured(job, c, now);
    case 'measured-at':
      return torqueRead(job, c) ?? measuredAt(job, c, now);
    case 'start-timer':
      return startTimer(job, now);
    case 'end-closed':
      return closeEnd(job, c);
    case 'came-off':
      return cameOff(job, c);
    case 'dropped-one':
      return droppedOne(job, now);
    case 'found-it':
      return foundIt(job);
    case 'take-back':
      return takeBack(job);
    case 'not-sure':
      return notSure(job, c);
    case 'mark-at':
      return markAt(job, c, now);
    case 'no-mark':
      return noMark(job);
    case 'clicked-early':
    case 'felt-soft':
    case 'went-past':
    case 'snapped':
    case 'pulled-through':
      return fault(job, c.rule);
    case 'clicked-twice':
      return clickedTwice(job);
    case 'out-of-order':
      return outOfOrder(job);
    case 'bolt-replaced':
      return boltReplaced(job, c);
    case 'dropped-wrench':
      return droppedWrench(job);
    case 'skip-step':
      return skipStep(job);
    case 'sign-off':
      return signOff(job, c);
    case 'go-ahead-anyway':
      return goAhead(job);
    case 'repeat-pass':
      return repeatPass(job);
    case 'slacken-all':
      return slackenAll(job);
    case 'confirm':
      return confirmPending(job, now);
    case 'cancel':
      return cancelPending(job);
    case 'turned':
      return turned(job, true);
    case 'not-turned':
      return turned(job, false);
    case 'close-job':
      return closeJob(job, now);
    case 'hand-over':
      return leave(job, 'hand-over');
    case 'adapter-on':
      return adapterOn(job, c, now);
    case 'adapter-off':
      return adapterOff(job);
    case 'have-time':
      return haveTime(job, now);
    case 'no-time':
      return noTime(job);
    case 'next-pass-ready':
      return nextPassReady(job, now);
    case 'checked-by':
      return checkedBy(job, c);
    case 'add-to-list':
      return putOnList(job, c);
    default:
      return assertNever(c.rule);
  }
}
