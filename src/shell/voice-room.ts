import type { ReadingView, VoiceLine } from '../core/voice-profile/reading-view';
import type { PlainKey, ScreenWords } from '../ui/words/words';
import type { VoiceDesk, VoiceDeskParts } from './voice-desk';

/** The lines of this language that are read aloud: real ones of a procedure, which use most of its sounds. */
const LINES: readonly PlainKey[] = ['read-line-1', 'read-line-2', 'read-line-3', 'read-line-4'];

/** The door to the voice profiles, whose code is fetched when a profile is chosen or Setup is opened, and not before. */
export class VoiceRoom {
  #desk: VoiceDesk | null = null;
  #coming: Promise<VoiceDesk> | null = null;

  constructor(
    private readonly partsWith: (lines: readonly string[]) => VoiceDeskParts,
    private readonly words: ScreenWords,
  ) {}

  desk(): Promise<VoiceDesk> {
    this.#coming ??= import('./voice-desk').then(({ VoiceDesk }) => {
      this.#desk = new VoiceDesk(this.partsWith(LINES.map((key) => this.words[key] ?? '')));
      return this.#desk;
    });
    return this.#coming;
  }

  shown(): { readonly voices: readonly VoiceLine[]; readonly reading: ReadingView } {
    return { voices: this.#desk?.lines ?? [], reading: this.#desk?.view ?? { state: 'closed' } };
  }
}
