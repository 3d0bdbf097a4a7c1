import { EAR_FRAME, type EarFrame } from './front-end';
import type { Level } from './level-meter';

/** One stretch of speech as it is collected: its sound, its loudness, and where in the stream it lies. */
export class Utterance {
  readonly startFrame: number;
  #endFrame: number;
  readonly #blocks: Float32Array[] = [];
  #loudest = Number.NEGATIVE_INFINITY;
  #floor = 0;

  constructor(startFrame: number) {
    this.startFrame = startFrame;
    this.#endFrame = startFrame;
  }

  push(samples: Float32Array, level: Level): void {
    this.#blocks.push(samples);
    this.#endFrame += 1;
    this.#loudest = Math.max(this.#loudest, level.db);
    this.#floor = level.floorDb;
  }

  get endFrame(): number {
    return this.#endFrame;
  }

  get frames(): number {
    return this.#blocks.length;
  }

  /** How far its loudest frame stands out of the room. */
  get snrDb(): number {
    return this.#loudest - this.#floor;
  }

  samples(): Float32Array {
    const all = new Float32Array(this.#blocks.length * EAR_FRAME);
    this.#blocks.forEach((block, index) => {
      all.set(block, index * EAR_FRAME);
    });
    return all;
  }
}

/** The sound the decoder hears: the denoised with some of the captured mixed back in. */
export function mixed({ clean, raw }: EarFrame, wet: number): Float32Array {
  if (wet === 1) return clean;
  return clean.map((sample, index) => wet * sample + (1 - wet) * (raw[index] ?? 0));
}
