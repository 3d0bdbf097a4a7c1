import type { LiveGrammar } from '../../core/language/grammar';
import type { PlainKey, ScreenWords } from '../../ui/words/words';
import type { ClipParts } from '../clips/clips';
import { CameraTry } from './camera-check';
import { MicrophoneList, type MicrophoneParts } from './microphone-list';
import { SoundChecks } from './sound-checks';
import { VoiceDesk, type VoiceDeskParts } from './voice-desk';

export type SetupDeskParts = Omit<VoiceDeskParts, 'lines' | 'grammar'> & {
  readonly words: ScreenWords;
  readonly microphones: MicrophoneParts;
  readonly camera: Pick<ClipParts, 'still' | 'url'>;
  /** A few harmless words to try. */
  readonly grammar: () => LiveGrammar;
};

export type SetupDesk = {
  readonly checks: SoundChecks;
  readonly voices: VoiceDesk;
  readonly microphones: MicrophoneList;
  readonly camera: CameraTry;
};

/** The lines of this language that are read aloud: real ones of a procedure, which use most of its sounds. */
export const LINES_TO_READ: readonly PlainKey[] = ['read-line-1', 'read-line-2', 'read-line-3', 'read-line-4'];

export function setupDesk(parts: SetupDeskParts): SetupDesk {
  const lines = LINES_TO_READ.map((key) => parts.words[key] ?? '');
  return {
    checks: new SoundChecks(parts),
    voices: new VoiceDesk({ ...parts, lines }),
    microphones: new MicrophoneList(parts),
    camera: new CameraTry({ ...parts.camera, changed: parts.changed }),
  };
}
