import type { Span } from '../../../core/ports';
import { sanitise } from '../../ear/sanitise';
import { type FromFrame, OTHER, type Said, type SaidWord, type ToFrame } from '../frame-messages';
import type { Answer, Engine } from './engine';
import { Hearing } from './hearing';
import { LIMITS } from './listening-limits';
import { Loudness } from './loudness';

/** As many as hold the start of a recogniser in which no word is believed. */
const LEAD_CHUNKS = Math.ceil(LIMITS.fresh / LIMITS.chunk);

type Wanted = Extract<ToFrame, { type: 'arm' }>;

/**
 * Turns a stream of blocks into what was said, through recognisers of the library that live for one grammar, one
 * stretch between two replies of ours, and some minutes at most. It has no clock but the samples it counts.
 */
export class Listening {
  readonly #engine: Engine;
  readonly #tell: (event: FromFrame) => void;
  #sampleRate = 0;
  #frame = 0;
  #deafUntil = 0;
  #muted = false;
  #wanted: Wanted | null = null;
  #armed: Wanted | null = null;
  #hearing: Hearing | null = null;
  /** The one before was ended in the middle of speech, so what comes next is the rest of it. */
  #torn = false;
  #partial = '';
  #loudness = new Loudness(1);
  #blocks: Float32Array[] = [];
  #gathered = 0;
  /** What was sent last, and what of it the next recogniser hears first: a word may begin as one takes the other's place. */
  #recent: readonly Float32Array[] = [];
  #lead: readonly Float32Array[] = [];
  #ping: number | null = null;

  constructor(engine: Engine, tell: (event: FromFrame) => void) {
    this.#engine = engine;
    this.#tell = tell;
  }

  /** A microphone has opened at this rate, in hertz; its first half second is thrown away. */
  listen(sampleRate: number): void {
    this.#drop();
    this.#sampleRate = sampleRate;
    this.#frame = 0;
    this.#deafUntil = LIMITS.opening * sampleRate;
    this.#loudness = new Loudness(sampleRate);
  }

  arm(wanted: Wanted): void {
    this.#wanted = wanted;
    if (!this.#hearing?.isSpeech) this.#switch();
  }

  mute(): void {
    this.#muted = true;
    this.#drop();
    this.#switch();
  }

  unmute(): void {
    if (!this.#muted) return;
    this.#muted = false;
    this.#deafUntil = this.#frame + LIMITS.afterMute * this.#sampleRate;
  }

  /** Answered at once, or as soon as the library has caught up: a watch over it, and not only over this page. */
  ping(id: number): void {
    this.#ping = id;
    this.#answerPing();
  }

  push(block: Float32Array): void {
    if (this.#sampleRate === 0) return;
    const samples = sanitise(block);
    for (const level of this.#loudness.push(samples)) this.#tell({ type: 'level', ...level });
    this.#frame += samples.length;
    if (this.#muted || this.#frame <= this.#deafUntil) {
      this.#forget();
      return;
    }
    this.#blocks.push(samples);
    this.#gathered += samples.length;
    if (this.#gathered >= LIMITS.chunk * this.#sampleRate) this.#feed();
  }

  #feed(): void {
    const chunk = joined(this.#blocks, this.#gathered);
    this.#blocks = [];
    this.#gathered = 0;
    if (!this.#armed) return;
    this.#hearing ??= this.#begun(this.#armed, this.#frame - chunk.length);
    this.#hearing.feed(chunk);
    this.#recent = [...this.#recent.slice(1 - LEAD_CHUNKS), chunk];
  }

  #begun({ phrases }: Wanted, frame: number): Hearing {
    const from = frame - this.#lead.reduce((total, { length }) => total + length, 0);
    const hearing: Hearing = new Hearing(this.#engine, this.#sampleRate, phrases, from, (answer) =>
      this.#answer(hearing, answer),
    );
    for (const earlier of this.#lead) hearing.feed(earlier);
    this.#lead = [];
    return hearing;
  }

  #answer(hearing: Hearing, answer: Answer): void {
    // One that has been dropped may still be answering.
    if (hearing !== this.#hearing) return;
    switch (answer.kind) {
      case 'partial':
        this.#report(answer.words);
        break;
      case 'result':
        this.#conclude(hearing, answer.words);
        break;
      case 'error':
        this.#drop();
        this.#armed = null;
        this.#tell({ type: 'failed', code: 'grammar-refused', detail: answer.detail });
    }
    if (hearing.isSpent(this.#loudness.quietSeconds)) {
      this.#torn = hearing.wasCut;
      if (this.#torn) this.#drop();
      else this.#renew(hearing);
    }
    if (!this.#hearing?.isSpeech && this.#wanted !== this.#armed && answer.kind !== 'error') this.#switch();
    this.#answerPing();
  }

  /** None of the words that only stand for other speech: nobody is speaking to us. */
  #report(words: string): void {
    const known = words
      .split(' ')
      .filter((word) => word !== OTHER)
      .join(' ');
    if (known === this.#partial) return;
    this.#partial = known;
    if (known !== '' && this.#armed) this.#tell({ type: 'partial', revision: this.#armed.revision, words: known });
  }

  #conclude(hearing: Hearing, words: readonly SaidWord[]): void {
    const { snrDb } = this.#loudness.peak();
    this.#partial = '';
    const [first] = words;
    const last = words.at(-1);
    if (!first || !last || !this.#armed) return;
    const torn = this.#torn || hearing.wasCut || first.start < LIMITS.fresh;
    this.#torn = false;
    const said: Said = { words, snrDb, torn };
    this.#tell({ type: 'said', revision: this.#armed.revision, said, ...this.#span(hearing.startFrame, first, last) });
  }

  #span(from: number, first: SaidWord, last: SaidWord): Span {
    const at = (seconds: number): number => Math.min(this.#frame, from + Math.round(seconds * this.#sampleRate));
    return { startFrame: at(first.start), endFrame: at(last.end) };
  }

  /** The grammar that is wanted takes the place of the one in force, and says so. One revision is one grammar. */
  #switch(): void {
    const wanted = this.#wanted;
    if (!wanted || wanted === this.#armed) return;
    if (wanted.revision !== this.#armed?.revision) this.#drop();
    this.#armed = wanted;
    this.#tell({ type: 'armed', revision: wanted.revision });
  }

  /** A fresh recogniser goes on where this one stops, and nothing is lost. */
  #renew(hearing: Hearing): void {
    hearing.remove();
    this.#hearing = null;
    this.#partial = '';
    this.#lead = this.#recent;
  }

  #drop(): void {
    this.#hearing?.remove();
    this.#hearing = null;
    this.#partial = '';
    this.#forget();
    this.#answerPing();
  }

  /** Nothing of what was captured so far reaches a recogniser that is yet to begin. */
  #forget(): void {
    this.#blocks = [];
    this.#gathered = 0;
    this.#recent = [];
    this.#lead = [];
  }

  #answerPing(): void {
    if (this.#ping === null || this.#hearing?.isSlow) return;
    this.#tell({ type: 'pong', id: this.#ping });
    this.#ping = null;
  }
}

function joined(blocks: readonly Float32Array[], length: number): Float32Array {
  const all = new Float32Array(length);
  let at = 0;
  for (const block of blocks) {
    all.set(block, at);
    at += block.length;
  }
  return all;
}
