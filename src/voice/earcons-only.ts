import { Listeners } from '../core/listeners';
import { ok } from '../core/result';
import { outputTailMs } from './audio-bus';
import type { Mouth, MouthEvent } from './mouth';
import { beep } from './playback';
import { SILENT_PIECE } from './silent-piece';

/** A mouth without a voice: what would be said is over at once and stays on the screen; signals sound as ever. */
export function earconsOnly(): Mouth {
  const listeners = new Listeners<MouthEvent>();
  const announcement = setTimeout(() => listeners.tell({ type: 'ready' }));
  return {
    make: async () => ok(SILENT_PIECE),
    prepare: () => {},
    beep,
    tailMs: outputTailMs,
    rate: () => 1,
    on: listeners.add,
    close: () => {
      clearTimeout(announcement);
      listeners.clear();
    },
  };
}
