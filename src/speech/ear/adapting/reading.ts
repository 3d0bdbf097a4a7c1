import { fail, ok, type Result } from '../../../core/result';
import type { Lesson, LineHeard } from '../../../core/voice-profile/reading-aloud';
import type { Decoder } from '../decoder';
import type { EarFrame } from '../front-end';
import type { Level } from '../level-meter';
import type { Tuning } from '../tuning';
import { type ModelFile, readAcoustics } from './acoustics';
import { VoiceLesson } from './voice-lesson';

type Tell = (line: LineHeard) => void;

/** The ear's other use: lines instead of commands, for as long as it is on. */
export class Reading {
  #lesson: VoiceLesson | null = null;
  #tell: Tell = () => undefined;

  constructor(
    private readonly decoder: Decoder,
    private readonly model: { readonly folder: string; readonly file: ModelFile },
    private readonly tuning: Tuning,
  ) {}

  get isOn(): boolean {
    return this.#lesson !== null;
  }

  /**
   * Waits for a line, and `tell` hears what became of it. The first call begins a lesson. An error is the text of what is
   * wrong with the line or with the model.
   */
  async read(words: readonly string[], tell: Tell): Promise<Result<void, string>> {
    const strange = words.filter((word) => !this.decoder.knows(word));
    if (strange.length > 0) return fail(`no pronunciation: ${strange.join(', ')}`);
    if (!this.#lesson) {
      const acoustics = await readAcoustics(this.model.file);
      if (!acoustics.ok) return acoustics;
      this.#lesson = new VoiceLesson(this.decoder, acoustics.value, this.model.folder, this.tuning);
    }
    this.#tell = tell;
    this.#lesson.expect(words);
    return ok(undefined);
  }

  push(frame: EarFrame, level: Level): void {
    const heard = this.#lesson?.push(frame, level);
    if (heard) this.#tell(heard);
  }

  /** What the lines have taught so far; null while none was waited for, or too few were good. */
  learn(): Lesson | null {
    const lesson = this.#lesson?.learn();
    return lesson?.ok ? lesson.value : null;
  }

  /** What was learned is gone unless it was asked for. */
  end(): void {
    this.#lesson = null;
  }
}
