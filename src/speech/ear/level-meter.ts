/** What the level meter knows after a frame. Decibels below full scale, so 0 is the loudest a microphone can give. */
export type Level = { readonly db: number; readonly floorDb: number; readonly clipped: boolean };

const SILENCE_DB = -100;
/** The floor is the quietest smoothed level of the last three seconds, kept as six half-second minima. */
const SLICE_FRAMES = 50;
const SLICES = 6;
const SMOOTHING = 0.8;
const CLIPPED_AT = 0.99;

/** Follows the level of the microphone and the room's noise floor under it, a frame at a time. */
export class LevelMeter {
  #power = 0;
  #frames = 0;
  #minima: number[] = [];
  #lowest = Number.POSITIVE_INFINITY;

  push(frame: Float32Array): Level {
    const power = frame.reduce((sum, sample) => sum + sample * sample, 0) / Math.max(1, frame.length);
    this.#power = this.#frames === 0 ? power : SMOOTHING * this.#power + (1 - SMOOTHING) * power;
    this.#frames += 1;
    this.#lowest = Math.min(this.#lowest, this.#power);
    const floor = Math.min(this.#lowest, ...this.#minima);
    if (this.#frames % SLICE_FRAMES === 0) {
      this.#minima = [...this.#minima.slice(1 - SLICES), this.#lowest];
      this.#lowest = Number.POSITIVE_INFINITY;
    }
    return {
      db: decibels(power),
      floorDb: decibels(floor),
      clipped: frame.some((sample) => Math.abs(sample) >= CLIPPED_AT),
    };
  }
}

/** The mean loudness of some samples. Decibels below full scale, -100 for silence. */
export const loudnessOf = (samples: Float32Array): number =>
  decibels(samples.reduce((sum, sample) => sum + sample * sample, 0) / Math.max(1, samples.length));

function decibels(power: number): number {
  return power > 0 ? Math.max(SILENCE_DB, 10 * Math.log10(power)) : SILENCE_DB;
}
