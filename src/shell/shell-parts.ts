import type { LanguageProfile } from '../core/language-profile';
import type { LogStore } from '../core/log/log-store';
import type { Clock, Hash } from '../core/ports';
import type { Tongue } from '../core/tongue';
import type { After } from '../store/log-writer';
import type { WriterLock } from '../store/writer-lock';
import type { Acknowledgement } from '../ui/setup/about';
import type { ScreenWords } from '../ui/words/words';
import type { ClipParts } from './clips/clips';
import type { Document } from './library';
import type { Save } from './record/exports';
import type { MicrophoneParts } from './setup/microphone-list';
import type { ModelParts } from './setup/model-desk';
import type { SoundParts } from './sound/sound';

/** The outside, as the composition root built it. */
export type ShellParts = {
  readonly store: LogStore;
  /** A store that is gone with the page, for rehearsals. */
  readonly scratchStore: () => Promise<LogStore>;
  readonly lock: WriterLock;
  readonly hash: Hash;
  readonly clock: Clock;
  readonly newId: () => string;
  readonly tongue: Tongue;
  readonly words: ScreenWords;
  /** Every language of the program, for Setup to offer. */
  readonly languages: readonly LanguageProfile[];
  readonly documents: readonly Document[];
  readonly after: After;
  readonly sound: SoundParts;
  readonly clips: ClipParts;
  readonly microphones: MicrophoneParts;
  readonly models: ModelParts;
  /** The words that licences ask to be shown. Fetched when Setup is opened. */
  readonly acknowledgements: () => Promise<readonly Acknowledgement[]>;
  readonly keepAwake: () => void;
  /** Loads the page again, for another language to take hold. */
  readonly reload: () => void;
  /** Draws what has changed, then opens the print dialogue; back when that is closed. */
  readonly print: () => void;
  readonly save: Save;
};
