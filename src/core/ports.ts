import type { LiveGrammar } from './language/grammar';

/** The interfaces the outside implements. The core never calls them; the machine and the composition root do. */

/** Wall time in UTC milliseconds, and a monotonic clock in milliseconds that no clock change can move. */
export type Clock = { readonly wall: () => number; readonly mono: () => number };

/** SHA-256 of UTF-8 text, in lower-case hex. Synchronous: awaiting inside a database transaction commits it early. */
export type Hash = (text: string) => string;

export type RejectReason =
  | 'filler' // other speech, absorbed by the phone loop
  | 'noise' // mostly removed by the denoiser, so no voice at the microphone
  | 'decoy' // a common stray word, listed on purpose
  | 'score' // too unlike the command it came nearest to
  | 'too-short'
  | 'too-long'
  | 'too-quiet'
  | 'no-path' // the decoder found no complete phrase
  | 'not-a-command' // words that mean nothing here
  | 'ambiguous' // two meanings fit, the words or the sound
  | 'stale' // asked under another revision
  | 'own-voice';

/** Frames count samples of the captured stream at its native rate since the microphone opened. */
export type Span = { readonly startFrame: number; readonly endFrame: number };

/** What was judged, mono at 16 kHz, only where a person has asked for it to be kept. */
type WithSound = { readonly sound?: Float32Array };

export type RecogniserEvent =
  | { readonly type: 'ready'; readonly msToLoad: number }
  | { readonly type: 'armed'; readonly revision: string }
  | { readonly type: 'level'; readonly db: number; readonly floorDb: number; readonly clipped: boolean }
  | { readonly type: 'partial'; readonly revision: string; readonly words: string }
  | ({ readonly type: 'heard'; readonly revision: string; readonly words: string; readonly score: number } & Span &
      WithSound)
  | ({
      readonly type: 'rejected';
      readonly revision: string;
      readonly words: string;
      readonly score: number;
      readonly why: RejectReason;
    } & Span &
      WithSound)
  | { readonly type: 'failed'; readonly code: RecogniserFault; readonly detail: string };

export type RecogniserFault =
  | 'microphone-refused'
  | 'microphone-missing'
  | 'microphone-lost'
  | 'audio-blocked'
  | 'model-missing'
  | 'model-broken'
  | 'grammar-refused'
  | 'worker-crashed'
  | 'worker-silent';

/** Words in: the embedded recogniser, a user-supplied model, or typed words. A score of 0..1; 1 is certain. */
export type Recogniser = {
  readonly start: () => void;
  /** Takes effect between utterances; answers from before carry the old revision. */
  readonly arm: (grammar: LiveGrammar) => void;
  /** The ear is deaf while muted, and for a short tail after; what began before the end of a mute is dropped. */
  readonly mute: () => void;
  readonly unmute: () => void;
  readonly on: (listener: (event: RecogniserEvent) => void) => () => void;
  readonly close: () => void;
};

export type Earcon = 'heard' | 'not-understood' | 'pass-complete' | 'timer-up' | 'saved-not';

export type SpeechRequest = {
  readonly id: string;
  readonly text: string;
  /**
   * `urgent` cuts what is being said, unless that is urgent too; `normal` waits its turn, and cuts idle talk; `idle` is
   * dropped if anything else is being said or waits.
   */
  readonly priority: 'urgent' | 'normal' | 'idle';
};

export type VoiceEvent =
  | { readonly type: 'ready' }
  | { readonly type: 'started'; readonly id: string }
  /** Every request ends in exactly one of `finished` and `cut`. */
  | { readonly type: 'finished'; readonly id: string }
  | { readonly type: 'cut'; readonly id: string }
  /** Our own sound, speech or earcon, is about to leave the speaker: the ear must be deaf from here. */
  | { readonly type: 'sound-on' }
  /**
   * It has left the speaker: the ear may open. A reply too long for one stretch has such a pause inside it, a listening
   * gap, between its `started` and its `finished`.
   */
  | { readonly type: 'sound-off' }
  /** All quiet: nothing playing and nothing queued. */
  | { readonly type: 'quiet' }
  | { readonly type: 'failed'; readonly code: VoiceFault; readonly detail: string };

export type VoiceFault = 'voice-missing' | 'voice-crashed' | 'voice-silent' | 'audio-blocked' | 'system-voice-stalled';

/** Words out. Rendering may start early (`prepare`), playback waits to be asked. */
export type Voice = {
  /** Renders what will likely be said next; takes the place of what was prepared before and not yet rendered. */
  readonly prepare: (texts: readonly string[]) => void;
  readonly say: (request: SpeechRequest) => void;
  readonly play: (earcon: Earcon) => void;
  /** Cuts what is being said and forgets what is queued, at once. */
  readonly hush: () => void;
  /**
   * Somebody has begun to speak: nothing but urgent speech starts until `resume`, or for four seconds at most. It is
   * what makes a listening gap long enough for a sentence that began inside it.
   */
  readonly hold: () => void;
  readonly resume: () => void;
  readonly on: (listener: (event: VoiceEvent) => void) => () => void;
  readonly close: () => void;
};
