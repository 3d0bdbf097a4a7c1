import { fail, ok, type Result } from '../../../core/result';
import type { Lesson, LineHeard } from '../../../core/voice-profile/reading-aloud';
import type { Decoder } from '../decoder';
import type { EarFrame } from '../front-end';
import type { Level } from '../level-meter';
import { SpeechGate } from '../speech-gate';
import type { Tuning } from '../tuning';
import { mixed, Utterance } from '../utterance';
import type { Acoustics } from './acoustics';
import { learned } from './learned';
import type { AlignedLine } from './occupancy';
import { readLine } from './read-line';

/** People pause where a line has a comma. */
const END_OF_LINE_FRAMES = 90;
const LONGEST_FRAMES = 1500;
/** A line to be held against the others needs others to be held against. */
const LEAST_LINES = 3;

type Heard = { readonly line: AlignedLine; readonly voiceDb: number; readonly noiseDb: number };

/** Listens to lines read aloud, and to nothing else, and works out what they tell of the voice. */
export class VoiceLesson {
  readonly #gate: SpeechGate;
  readonly #good: Heard[] = [];
  #words: readonly string[] = [];
  #preRoll: (readonly [EarFrame, Level])[] = [];
  #utterance: Utterance | null = null;

  constructor(
    private readonly decoder: Decoder,
    private readonly acoustics: Acoustics,
    private readonly folder: string,
    private readonly tuning: Tuning,
  ) {
    this.#gate = new SpeechGate(tuning.gate);
  }

  /** The line that is to be read next. Words that the decoder cannot pronounce are a bug of the language's files. */
  expect(words: readonly string[]): void {
    this.#words = words;
    this.#utterance = null;
    this.#preRoll = [];
    this.#gate.reset();
  }

  /** Takes a frame; answers when a line is over. A good one is kept, and no other is listened for until it is asked for. */
  push(frame: EarFrame, level: Level): LineHeard | null {
    if (this.#words.length === 0) return null;
    const edge = this.#gate.push(frame, level, END_OF_LINE_FRAMES);
    if (!this.#utterance) {
      this.#preRoll = [...this.#preRoll.slice(1 - this.tuning.timing.preRoll), [frame, level]];
      if (edge === 'opened') this.#open();
      return null;
    }
    this.#utterance.push(frame, mixed(frame, this.tuning.wet), level);
    return edge === 'closed' || this.#utterance.frames >= LONGEST_FRAMES ? this.#close(this.#utterance) : null;
  }

  /** What the good lines come to, or how many are still wanting. */
  learn(): Result<Lesson, { readonly code: 'too-few'; readonly wanting: number }> {
    const wanting = LEAST_LINES - this.#good.length;
    if (wanting > 0) return fail({ code: 'too-few', wanting });
    const mean = (of: (heard: Heard) => number): number =>
      this.#good.reduce((sum, heard) => sum + of(heard), 0) / this.#good.length;
    return ok({
      ...learned(
        this.#good.map(({ line }) => line),
        this.acoustics,
      ),
      model: { folder: this.folder, checksum: this.acoustics.checksum },
      voiceDb: mean(({ voiceDb }) => voiceDb),
      noiseDb: mean(({ noiseDb }) => noiseDb),
    });
  }

  #open(): void {
    this.#utterance = new Utterance(0, this.tuning.trim);
    for (const [frame, level] of this.#preRoll) this.#utterance.push(frame, mixed(frame, this.tuning.wet), level);
    this.#preRoll = [];
  }

  #close(utterance: Utterance): LineHeard {
    const [heard, line] = readLine(this.decoder, this.#words, utterance, this.tuning);
    if (line) this.#good.push({ line, voiceDb: heard.voiceDb, noiseDb: heard.noiseDb });
    this.expect(line ? [] : this.#words);
    return heard;
  }
}
