import { reply } from '../../phrasing/reply';
import { announce } from '../announce';
import type { Command } from '../command';
import { asks, type Decision, refused, told } from '../decision';
import type { Moment } from '../entry';
import type { Job } from '../job';
import { isAsking, tell } from './asking';
import { allMarked, boltDone, boltsDone, clickedOrDone, setAt, soFar } from './bolt';
import { closeJob } from './close';
import { control, isControl } from './control';
import { markAt, noMark, notSure } from './doubt';
import { cameOff, closeEnd, droppedOne, foundIt } from './ends';
import { boltReplaced, clickedTwice, droppedWrench, fault, outOfOrder } from './fault';
import { cancelPending, confirmPending, turned } from './pending';
import { goAhead, repeatPass, signOff, skipStep, slackenAll } from './permission';
import { settle } from './settle';
import { answer, done, measured, measuredAt, startTimer } from './step';
import { takeBack } from './undo';

/**
 * What a command does to a job at a moment: entries to be written before anything is confirmed, and what to say.
 * Total: every command in every state gives a decision, and one that does not belong here is refused, never guessed.
 */
export function decide(job: Job, c: Command, now: Moment): Decision {
  if (isControl(c.rule)) return settle(job, control(job, c), now);
  if (isAsking(c.rule)) return tell(job, c, now);
  if (job.status !== 'open') return refused(reply('not-here', {}));
  if (job.paused) return refused(reply('paused', {}));
  return settle(job, work(job, c, now), now);
}

function work(job: Job, c: Command, now: Moment): Decision {
  switch (c.rule) {
    case 'done':
    case 'clicked':
      return clickedOrDone(job, c, now) ?? done(job, now);
    case 'bolt-done':
      return boltDone(job, c, now);
    case 'bolts-done':
      return boltsDone(job, c);
    case 'so-far':
      return soFar(job, c);
    case 'all-marked':
      return allMarked(job);
    case 'set-at':
      return setAt(job, c);
    case 'answer':
      return answer(job, c, now);
    case 'measured':
      return measured(job, c, now);
    case 'measured-at':
      return measuredAt(job, c, now);
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
      return markAt(job, c);
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
      return droppedWrench();
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
      return asks([{ kind: 'asked', question: { kind: 'hand-over' } }], reply('confirm-hand-over', {}));
    default:
      return refused(reply('not-here', {}));
  }
}

/** What to say when a job is opened or taken up again. */
export function greeting(job: Job, now: Moment): Decision {
  return told(...announce(job, now));
}
