import { placeOf } from '../../core/job/place';
import { nodeOf } from '../../core/job/plan';
import type { PlainKey } from '../../ui/words/words';
import type { Rooms } from '../rooms';

/** What is told where, each once, on the tour's document of any language: three bolts on a plate. A place the document no longer has is simply not come to. */
const WORDS: Readonly<Record<string, PlainKey>> = {
  'ready.clamp': 'tour-step',
  'ready.corner': 'tour-hold',
  'ready.by-hand': 'tour-help',
  'tighten.tighten-plate.first.set': 'tour-set',
  'tighten.tighten-plate.first.work': 'tour-bolt',
  'tighten.tighten-plate.second.set': 'tour-end',
};

/** Goes along with a rehearsal and tells what can be said where, until "stop", the button, or the end of the first pass. */
export function guide({ seat, sound, notices, say }: Rooms): void {
  const { open } = seat;
  if (!open) return;
  // The offer has said so, and two notices would leave the Bench little room.
  notices.clear('rehearsal');
  const told = new Set<PlainKey>();
  const look = (): void => {
    const { job, heard } = open.desk.snapshot;
    // It is skipped by the same word that ends all talking.
    if (seat.open !== open || heard?.outcome === 'stop') {
      end();
      return;
    }
    const key = WORDS[nodeOf(job.plan, placeOf(job))];
    if (key === undefined || told.has(key)) return;
    told.add(key);
    notices.news('tour', say(key), [{ label: say('tour-skip'), event: { type: 'end-tour' } }]);
    sound.voice.say({ id: 'tour', text: say(key), priority: 'normal' });
  };
  const off = open.desk.subscribe(look);
  const end = (): void => {
    off();
    notices.clear('tour');
  };
  look();
}
