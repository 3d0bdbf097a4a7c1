import type { LineVerdict } from './reading-aloud';
import type { Sureness } from './voice-profile';

/** A profile as it stands in a list. */
export type VoiceLine = { readonly id: string; readonly person: string; readonly headset: string };

/** What the sheet for reading aloud shows. */
export type ReadingView =
  | { readonly state: 'closed' }
  /** Who will read, and with which microphone. */
  | { readonly state: 'asking' }
  | { readonly state: 'waiting' }
  | {
      readonly state: 'reading';
      /** From one. */
      readonly line: number;
      readonly of: number;
      readonly text: string;
      /** 0..1 */
      readonly level: number;
      /** What became of the last reading; null before the first, `nothing` where none has come for a while. */
      readonly last: LineVerdict | 'nothing' | null;
    }
  | { readonly state: 'learning' }
  | {
      readonly state: 'done';
      readonly found: Sureness | 'fits-already';
      readonly voiceDb: number;
      readonly noiseDb: number;
    }
  | { readonly state: 'failed'; readonly why: ReadingTrouble };

export type ReadingTrouble = 'no-microphone' | 'refused' | 'other-recogniser' | 'too-few' | 'model' | 'not-kept';
