import type { RecogniserEvent, Span } from '../../core/ports';

/** The model's own word for whatever is none of the words it listens for. */
export const OTHER = '[unk]';

/** A word as the model takes it to have been said: seconds from the start of its recogniser, confidence 0..1. */
export type SaidWord = {
  readonly word: string;
  readonly conf: number;
  readonly start: number;
  readonly end: number;
};

/** One utterance, as yet unjudged. */
export type Said = {
  readonly words: readonly SaidWord[];
  /** How far its loudest moment stood out of the room. */
  readonly snrDb: number;
  /** It was already going on when the ear opened, or was still when it was ended by force: part of it is missing. */
  readonly torn: boolean;
};

/** What the app tells the page of the user's model. */
export type ToFrame =
  | { readonly type: 'load'; readonly archive: Blob }
  /** Carries the port the worklet's blocks arrive on; a new microphone sends a new one. */
  | { readonly type: 'listen'; readonly sampleRate: number; readonly blocks: MessagePort }
  | { readonly type: 'arm'; readonly revision: string; readonly phrases: readonly string[] }
  | { readonly type: 'mute' }
  | { readonly type: 'unmute' }
  | { readonly type: 'ping'; readonly id: number };

/** `script` while the library itself is fetched, `model` while it unpacks and loads the archive. */
export type LoadStage = 'script' | 'model';

export type FromFrame =
  | { readonly type: 'loading'; readonly stage: LoadStage }
  | { readonly type: 'pong'; readonly id: number }
  | ({ readonly type: 'said'; readonly revision: string; readonly said: Said } & Span)
  | Extract<RecogniserEvent, { type: 'ready' | 'armed' | 'level' | 'partial' | 'failed' }>;

/** The first and only message to the page's window: it carries the port that all others go through. */
export const GREETING = 'wrenchside-vosk';
