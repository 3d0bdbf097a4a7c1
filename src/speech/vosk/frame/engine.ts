import type { SaidWord } from '../frame-messages';

/** What comes back for each block, in order; a result also for each `finish`. */
export type Answer =
  | { readonly kind: 'partial'; readonly words: string }
  | { readonly kind: 'result'; readonly words: readonly SaidWord[] }
  | { readonly kind: 'error'; readonly detail: string };

/** One recogniser of the library: a grammar for life, and a stream of sound. */
export type Session = {
  /** Samples of full scale 1. */
  readonly feed: (samples: Float32Array) => void;
  /** Ends the utterance here. */
  readonly finish: () => void;
  readonly remove: () => void;
};

/** The library with a model in it, as far as listening needs to know. */
export type Engine = {
  readonly open: (sampleRate: number, phrases: readonly string[], answer: (answer: Answer) => void) => Session;
};
