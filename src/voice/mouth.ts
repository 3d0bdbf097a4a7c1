import type { Earcon, VoiceFault } from '../core/ports';
import type { Result } from '../core/result';

export type VoiceFailure = { readonly code: VoiceFault; readonly detail: string };

/** How a sound came to its end. A sound that was stopped has no end. */
export type Ended = (outcome: Result<void, VoiceFailure>) => void;

export type Stop = () => void;

/** One stretch of speech, ready to be sounded once. */
export type Piece = {
  /** How long it will last, in milliseconds: measured where it was rendered, estimated where it was not. */
  readonly ms: number;
  /** Begins at once. `ended` is called once, never before this returns and never after `Stop`. */
  readonly sound: (ended: Ended) => Stop;
};

/** What makes and sounds speech. It has no order of its own: `talker` decides what is said and when. */
export type Mouth = {
  readonly make: (text: string) => Promise<Result<Piece, VoiceFailure>>;
  readonly prepare: (texts: readonly string[]) => void;
  readonly beep: (earcon: Earcon, ended: Ended) => Stop;
  /** How long the last sound is still on its way to the speaker when it has ended for us, in milliseconds. */
  readonly tailMs: () => number;
  /** Pace of the speech, to judge the length of a text by: 1 is the speaker's own. */
  readonly rate: () => number;
  readonly on: (listener: (event: MouthEvent) => void) => Stop;
  readonly close: () => void;
};

export type MouthEvent = { readonly type: 'ready' } | ({ readonly type: 'failed' } & VoiceFailure);
