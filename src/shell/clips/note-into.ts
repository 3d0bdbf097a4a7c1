import { reply } from '../../core/phrasing/reply';
import type { RecogniserEvent } from '../../core/ports';
import type { OpenJob } from '../job/job-desk';
import { type ClipKeeper, MOST_BYTES } from './clip-keeper';
import type { ClipHost } from './clips';
import { takeNote } from './note-taker';

type Noting = ClipHost & {
  /** "Stop" was said or pressed, or the job is left: the note ends here. */
  readonly signal: AbortSignal;
  /** Where the ear's events go while it is lent. */
  readonly listening: { to: (event: RecogniserEvent) => void };
};

/** Asks for a note, records it and keeps it. Whatever comes of it is said, and while it is recorded the screen tells so. */
export async function noteInto(open: OpenJob, step: string, keeper: ClipKeeper, noting: Noting): Promise<void> {
  const { sound, notices, say, signal, listening } = noting;
  const full = await keeper.full(open);
  if (full) {
    open.desk.excuse([full]);
    return;
  }
  open.desk.answer([reply('note-taking', {})]);
  const end = await takeNote({
    voice: sound.voice,
    after: noting.after,
    now: noting.now,
    microphone: () => sound.microphone,
    record: (stream) => noting.record(stream, MOST_BYTES),
    signal,
    levels: (listener) => {
      listening.to = listener;
    },
    began: () => {
      notices.news('note', say('note-recording'), [
        { label: say('note-end'), event: { type: 'command', command: 'take-note', slots: 'none' } },
      ]);
    },
  });
  notices.clear('note');
  switch (end.code) {
    case 'kept':
      return keeper.keep(open, {
        kind: 'noted',
        step,
        recorded: end.note,
        told: reply(end.isCut ? 'note-cut' : 'note-kept', {}),
      });
    case 'empty':
      return open.desk.excuse([reply('note-empty', {})]);
    case 'no-microphone':
      return open.desk.excuse([reply('note-no-microphone', {})]);
    case 'failed':
      return open.desk.excuse([reply('note-failed', {})]);
  }
}
