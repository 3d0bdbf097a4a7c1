import type { Answer, Engine, Session } from './engine';
import { LIMITS } from './listening-limits';

/** A recogniser of the library at work: what it has been sent, what it owes, and when it has done enough. */
export class Hearing {
  /** Where in the captured stream its own time begins. */
  readonly startFrame: number;
  readonly #session: Session;
  readonly #sampleRate: number;
  #fed = 0;
  #owed = 0;
  #choked = false;
  #speechSince: number | null = null;
  #cut: 'no' | 'asked' | 'done' = 'no';

  constructor(
    engine: Engine,
    sampleRate: number,
    phrases: readonly string[],
    startFrame: number,
    answer: (answer: Answer) => void,
  ) {
    this.startFrame = startFrame;
    this.#sampleRate = sampleRate;
    this.#session = engine.open(sampleRate, phrases, (given) => {
      this.#note(given);
      answer(given);
    });
  }

  /** A block that comes while the library is far behind is lost, and with it the utterance. */
  feed(samples: Float32Array): void {
    this.#choked ||= this.#owed >= LIMITS.choked;
    if (this.#choked || this.#cut !== 'no') return;
    this.#session.feed(samples);
    this.#owed += 1;
    this.#fed += samples.length / this.#sampleRate;
    if (this.#speechSince === null || this.#fed - this.#speechSince < LIMITS.longest) return;
    this.#session.finish();
    this.#owed += 1;
    this.#cut = 'asked';
  }

  remove(): void {
    this.#session.remove();
  }

  get isSpeech(): boolean {
    return this.#speechSince !== null;
  }

  get isSlow(): boolean {
    return this.#owed >= LIMITS.slow;
  }

  /** Ended in the middle of speech. */
  get wasCut(): boolean {
    return this.#cut !== 'no' || this.#choked;
  }

  /** It is to be replaced: after speech was cut off, after it choked, or of old age in a pause of so many seconds. */
  isSpent(quietSeconds: number): boolean {
    if (this.#cut === 'done' || (this.#choked && this.#owed === 0)) return true;
    if (this.isSpeech || this.#owed > 0) return false;
    return this.#fed > LIMITS.oldAge * (quietSeconds >= LIMITS.quiet ? 1 : 2);
  }

  #note(answer: Answer): void {
    this.#owed = Math.max(0, this.#owed - 1);
    if (answer.kind === 'partial' && answer.words !== '') this.#speechSince ??= this.#fed;
    if (answer.kind !== 'result') return;
    this.#speechSince = null;
    // Results of before the cut may come first; the last answer owed is the one that was forced.
    if (this.#cut === 'asked' && this.#owed === 0) this.#cut = 'done';
  }
}
