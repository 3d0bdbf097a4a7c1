import type { ShowingRule } from '../core/job/command';
import type { Effect } from '../core/job/decision';
import type { Rooms } from './rooms';

type Doing = {
  /** Takes steps of speed, below nothing for slower. */
  readonly faster: (steps: number) => void;
  readonly show: (rule: ShowingRule) => Promise<void>;
};

/** Does what a command asked for beyond words and entries. */
export async function performEffect(effect: Effect, rooms: Rooms, { faster, show }: Doing): Promise<void> {
  const { seat, clips, exports, notices, say } = rooms;
  const { open } = seat;
  if (!open) return;
  switch (effect) {
    case 'hush':
      return clips.stop();
    case 'record-note':
      return clips.takeNote(open);
    case 'take-picture':
      return clips.takePicture(open);
    case 'slower':
      return faster(-1);
    case 'faster':
      return faster(1);
    case 'show-jobs':
    case 'show-procedures':
      // A closed job is left with it, so that the next one can be begun by voice.
      if (open.desk.job.status === 'closed') {
        await open.desk.idle();
        await seat.leave();
      }
      return show(effect);
    case 'show-bench':
    case 'show-record':
    case 'show-setup':
    case 'show-card':
      return show(effect);
    case 'make-hand-over': {
      const file = await (await exports()).wholeLog(open.card.id, open.card.title, open);
      if (file !== null) notices.news('hand-over', say('hand-over-made', { file }));
      return;
    }
    default:
      // The rest is the desk's own.
      return;
  }
}

/** The practice plate, with someone who tells what to say. */
export async function beginTour(rooms: Rooms, document: string): Promise<boolean> {
  const { guide } = await import('./job/tour');
  const isBegun = await rooms.jobs.rehearse(document);
  if (isBegun) guide(rooms);
  return isBegun;
}

/** All that is here in one file. */
export async function saveEverything({ everything, seat, notices, say }: Rooms): Promise<void> {
  await (await everything()).save(seat.open, (share) => notices.work('share', say('everything-saving'), share));
  notices.clear('share');
}

/** Clears this machine; false where another tab is writing, or a job would not go. */
export async function deleteEverything(rooms: Rooms): Promise<boolean> {
  const { jobs, library, models, setup, notices, say } = rooms;
  if (!(await jobs.removeAll())) return false;
  await library.removeOwn();
  await models.clear();
  await (await setup.desk()).voices.clear();
  notices.news('deleted', say('everything-deleted'));
  return true;
}
