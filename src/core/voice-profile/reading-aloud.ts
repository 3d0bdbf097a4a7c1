import type { VoiceProfile } from './voice-profile';

/** What became of a line that was read aloud. All but `good` ask for it once more. */
export type LineVerdict = 'good' | 'unlike' | 'too-quiet' | 'too-loud' | 'too-noisy';

export type LineHeard = {
  readonly verdict: LineVerdict;
  /** Loudness of the voice and of the room under it, in decibels below full scale. */
  readonly voiceDb: number;
  readonly noiseDb: number;
};

/** What some lines come to. */
export type Lesson = Pick<VoiceProfile, 'model' | 'means' | 'voiceDb' | 'noiseDb' | 'sureness'>;

export type ReadingEvent =
  | { readonly type: 'line'; readonly heard: LineHeard }
  /** Null where too few lines were good. */
  | { readonly type: 'lesson'; readonly lesson: Lesson | null }
  /** The model is not one that can be adapted, or a line is not one that can be read. */
  | { readonly type: 'reading-failed'; readonly detail: string }
  /** The profile that was given is for another model: it listens without. */
  | { readonly type: 'unaided' };

/** A recogniser that can learn from lines read aloud. While a line is waited for it answers to no command. */
export type ReadingAloud = {
  readonly read: (words: readonly string[]) => void;
  readonly learn: () => void;
  readonly end: () => void;
  readonly on: (listener: (event: ReadingEvent) => void) => () => void;
};

/** A line as the words that are spoken. */
export const wordsOfLine = (text: string): readonly string[] => text.toLowerCase().match(/[\p{L}'’]+/gu) ?? [];
