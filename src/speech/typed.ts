import type { LiveGrammar } from '../core/language/grammar';
import { Listeners } from '../core/listeners';
import type { Recogniser, RecogniserEvent } from '../core/ports';

/** A recogniser that is fed words: for the keyboard, the on-screen buttons and pedals, and every test without sound. */
export type TypedRecogniser = Recogniser & { readonly type: (words: string) => void };

/** Words typed are certain, and are heard even while the voice speaks: a finger is never an echo. */
export function typedRecogniser(): TypedRecogniser {
  const listeners = new Listeners<RecogniserEvent>();
  let revision = '';
  return {
    start: () => listeners.tell({ type: 'ready', msToLoad: 0 }),
    arm: (grammar: LiveGrammar) => {
      revision = grammar.revision;
      listeners.tell({ type: 'armed', revision });
    },
    mute: () => undefined,
    unmute: () => undefined,
    type: (typed) => {
      const words = typed.trim().toLowerCase().replaceAll(/\s+/g, ' ');
      if (words !== '') listeners.tell({ type: 'heard', revision, words, score: 1, startFrame: 0, endFrame: 0 });
    },
    on: listeners.add,
    close: () => listeners.clear(),
  };
}
