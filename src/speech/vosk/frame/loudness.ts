import { type Level, LevelMeter } from '../../ear/level-meter';
import { LIMITS } from './listening-limits';

/** Follows how loud it is in steps of ten milliseconds, and how loud it has been since it was last asked. */
export class Loudness {
  readonly #meter = new LevelMeter();
  readonly #step: number;
  readonly #every: number;
  #held = new Float32Array(0);
  #steps = 0;
  #loudest = Number.NEGATIVE_INFINITY;
  #floor = 0;
  #lastLoud = 0;

  constructor(sampleRate: number) {
    this.#step = Math.max(1, Math.round(sampleRate / 100));
    this.#every = Math.round(LIMITS.level * 100);
  }

  /** The levels worth showing among these samples. */
  push(samples: Float32Array): readonly Level[] {
    const all = new Float32Array(this.#held.length + samples.length);
    all.set(this.#held);
    all.set(samples, this.#held.length);
    const shown: Level[] = [];
    let at = 0;
    for (; at + this.#step <= all.length; at += this.#step) {
      const level = this.#meter.push(all.subarray(at, at + this.#step));
      this.#loudest = Math.max(this.#loudest, level.db);
      this.#floor = level.floorDb;
      this.#steps += 1;
      if (level.db > level.floorDb + LIMITS.loudDb) this.#lastLoud = this.#steps;
      if (this.#steps % this.#every === 0) shown.push(level);
    }
    this.#held = all.slice(at);
    return shown;
  }

  /** Seconds since anything stood out of the room. */
  get quietSeconds(): number {
    return (this.#steps - this.#lastLoud) / 100;
  }

  /** How far the loudest moment since the last call stood out of the room, in decibels. */
  peak(): { readonly snrDb: number } {
    const snrDb = Math.max(0, this.#loudest - this.#floor);
    this.#loudest = Number.NEGATIVE_INFINITY;
    return { snrDb };
  }
}
