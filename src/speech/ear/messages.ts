import type { LiveGrammar } from '../../core/language/grammar';
import type { RecogniserEvent } from '../../core/ports';
import type { ReadingEvent } from '../../core/voice-profile/reading-aloud';
import type { HearingAid } from '../../core/voice-profile/voice-profile';

/** How the ear behaves while the voice speaks: deaf, or awake to "stop" alone where the track cancels echo. */
export type Mute = 'deaf' | 'stop-only';

/** What the page tells the ear's worker. */
export type ToEar =
  | {
      readonly type: 'load';
      /** Absolute, with a trailing slash: a worker resolves relative addresses against its own script. */
      readonly modelBase: string;
      readonly language: EarLanguage;
      /** What reading aloud has taught about who speaks. */
      readonly aid: HearingAid | null;
    }
  /** Carries the port the worklet's blocks arrive on; a new microphone sends a new one. */
  | { readonly type: 'listen'; readonly sampleRate: number; readonly blocks: BlockPort }
  | { readonly type: 'arm'; readonly grammar: LiveGrammar }
  | { readonly type: 'mute'; readonly mute: Mute }
  | { readonly type: 'unmute' }
  /** Whether answers carry the sound they were made from; they do not at first. */
  | { readonly type: 'keep-sound'; readonly keep: boolean }
  /** A line to be read aloud, instead of commands; what the lines teach; and back to commands. */
  | { readonly type: 'read'; readonly words: readonly string[] }
  | { readonly type: 'learn' }
  | { readonly type: 'end-reading' }
  | { readonly type: 'stop' }
  | { readonly type: 'ping'; readonly id: number };

/** What the worker answers: the port's own events, the watchdog's, and what comes of reading aloud. */
export type FromEar = RecogniserEvent | { readonly type: 'pong'; readonly id: number } | ReadingEvent;

/** What the ear must know of a language before it is told what can be said. */
export type EarLanguage = {
  readonly model: EarModel;
  readonly lexicon: Lexicon;
  /** Words of everyday talk that compete with the commands and are refused. */
  readonly stray: readonly string[];
};

/** An acoustic model: its folder beside the others, and the phones it knows. */
export type EarModel = { readonly folder: string; readonly phones: readonly string[] };

/** Words and their pronunciations, each a row of the model's phones separated by spaces. */
export type Lexicon = ReadonlyMap<string, readonly string[]>;

/** The receiving end of a message channel. This folder is compiled without the DOM and cannot say MessagePort. */
export type BlockPort = { readonly close: () => void };
