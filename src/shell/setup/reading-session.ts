import type { LiveGrammar } from '../../core/language/grammar';
import type { RecogniserEvent } from '../../core/ports';
import { type Lesson, type ReadingAloud, type ReadingEvent, wordsOfLine } from '../../core/voice-profile/reading-aloud';
import type { ReadingTrouble, ReadingView } from '../../core/voice-profile/reading-view';
import type { After } from '../../store/log-writer';
import { loudness } from '../ear-screen';
import type { SharedEar } from '../sound/shared-ear';

/** After so long without a line it is said that nothing has come. */
const PATIENCE_MS = 15_000;

type Last = Extract<ReadingView, { readonly state: 'reading' }>['last'];

export type ReadingParts = {
  readonly ear: SharedEar;
  /** The ear's other use; null where another recogniser listens. */
  readonly reading: () => Promise<ReadingAloud | null>;
  readonly lines: readonly string[];
  /** What may be armed while no command is listened for. */
  readonly grammar: () => LiveGrammar;
  readonly after: After;
  /** Keeps what was learned; false where the store refuses. */
  readonly keep: (lesson: Lesson) => Promise<boolean>;
  readonly changed: () => void;
};

/** One reading of the lines, from the first to what they taught. It ends by itself, or when it is stopped. */
export class ReadingSession {
  #view: ReadingView = { state: 'waiting' };
  #line = 0;
  #last: Last = null;
  #reading: ReadingAloud | null = null;
  #ends: (() => void)[] = [];
  #calm: () => void = () => undefined;
  #isOver = false;

  constructor(private readonly parts: ReadingParts) {}

  get view(): ReadingView {
    return this.#view;
  }

  async begin(): Promise<void> {
    const giveBack = this.parts.ear.borrow(this.parts.grammar(), (event) => this.#hear(event));
    this.#ends.push(giveBack);
    const reading = await this.parts.reading();
    if (this.#isOver) return;
    if (!reading) return this.#fail('other-recogniser');
    this.#reading = reading;
    const off = reading.on((event) => this.#answer(event));
    this.#ends.push(off, () => reading.end());
    this.#ask();
  }

  /** Leaves out the line that will not be heard. */
  skip(): void {
    if (this.#view.state === 'reading') this.#next(null);
  }

  stop(): void {
    this.#isOver = true;
    this.#calm();
    for (const end of this.#ends.splice(0)) end();
  }

  #hear(event: RecogniserEvent): void {
    if (this.#isOver) return;
    if (event.type === 'failed') this.#fail(event.code === 'microphone-refused' ? 'refused' : 'no-microphone');
    if (event.type !== 'level') return;
    if (this.#view.state === 'waiting' || this.#view.state === 'reading') this.#show(loudness(event.db));
  }

  #answer(event: ReadingEvent): void {
    if (this.#isOver) return;
    switch (event.type) {
      case 'line':
        if (event.heard.verdict === 'good') this.#next('good');
        else this.#again(event.heard.verdict);
        break;
      case 'lesson':
        if (event.lesson) void this.#done(event.lesson);
        else this.#fail('too-few');
        break;
      case 'reading-failed':
        this.#fail('model');
        break;
      case 'unaided':
        break;
    }
  }

  /** The ear still waits for the same line. */
  #again(last: Last): void {
    this.#last = last;
    this.#await();
    this.#show(0);
  }

  #next(last: 'good' | null): void {
    this.#line += 1;
    this.#last = last;
    if (this.#line < this.parts.lines.length) {
      this.#ask();
      this.#show(0);
    } else {
      this.#calm();
      this.#view = { state: 'learning' };
      this.parts.changed();
      this.#reading?.learn();
    }
  }

  /** Tells the ear which line is read now. */
  #ask(): void {
    this.#reading?.read(wordsOfLine(this.parts.lines[this.#line] ?? ''));
    this.#await();
  }

  #await(): void {
    this.#calm();
    this.#calm = this.parts.after(PATIENCE_MS, () => {
      if (!this.#isOver) this.#again('nothing');
    });
  }

  #show(level: number): void {
    const { lines } = this.parts;
    if (!this.#reading) return;
    const text = lines[this.#line] ?? '';
    this.#view = { state: 'reading', line: this.#line + 1, of: lines.length, text, level, last: this.#last };
    this.parts.changed();
  }

  async #done(lesson: Lesson): Promise<void> {
    this.stop();
    const { means, sureness, voiceDb, noiseDb } = lesson;
    this.#view = (await this.parts.keep(lesson))
      ? { state: 'done', found: means ? sureness : 'fits-already', voiceDb, noiseDb }
      : { state: 'failed', why: 'not-kept' };
    this.parts.changed();
  }

  #fail(why: ReadingTrouble): void {
    this.stop();
    this.#view = { state: 'failed', why };
    this.parts.changed();
  }
}
