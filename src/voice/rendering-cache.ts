import type { Rendering, Utterance } from './flite/flite';

/** Some three minutes of speech at 16 kHz: the lines of a bolt pattern are said again and again. */
const MOST_BYTES = 6_000_000;

/** One key for each way of saying a text. */
export const keyOf = ({ speaker, rate, text }: Utterance): string => `${speaker} ${rate} ${text}`;

/** Renderings by key, the least lately used forgotten first once together they pass the bound. */
export class RenderingCache {
  readonly #kept = new Map<string, Rendering>();
  readonly #mostBytes: number;
  #bytes = 0;

  constructor(mostBytes = MOST_BYTES) {
    this.#mostBytes = mostBytes;
  }

  get bytes(): number {
    return this.#bytes;
  }

  get(key: string): Rendering | undefined {
    const found = this.#kept.get(key);
    if (found === undefined) return undefined;
    // A Map remembers the order of insertion; putting it back makes it the latest.
    this.#kept.delete(key);
    this.#kept.set(key, found);
    return found;
  }

  keep(key: string, rendering: Rendering): void {
    this.#forget(key);
    this.#kept.set(key, rendering);
    this.#bytes += rendering.wav.length;
    for (const oldest of this.#kept.keys()) {
      if (this.#bytes <= this.#mostBytes) break;
      this.#forget(oldest);
    }
  }

  #forget(key: string): void {
    const found = this.#kept.get(key);
    if (found === undefined) return;
    this.#kept.delete(key);
    this.#bytes -= found.wav.length;
  }
}
