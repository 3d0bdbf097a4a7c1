import { DENOISER_FRAME, DENOISER_HZ, type Denoiser } from './denoiser';
import { loudnessOf } from './level-meter';
import { Resampler } from './resampler';
import { SampleQueue } from './sample-queue';
import { sanitise } from './sanitise';

/** The acoustic model hears 16 kHz; everything behind the front end counts in its ten-millisecond frames. */
export const EAR_HZ = 16_000;
export const EAR_FRAME = 160;

/** Ten milliseconds of the stream, as captured and as cleaned, both at 16 kHz and both standing for the same moment. */
export type EarFrame = {
  readonly raw: Float32Array;
  readonly clean: Float32Array;
  /** Probability that someone speaks in it, 0..1. */
  readonly voice: number;
  /** Of the cleaned sound, in decibels below full scale: noise is far down in it. */
  readonly loudness: number;
  /** How much of it the denoiser took off, in decibels: next to nothing of a voice near the microphone. */
  readonly removedDb: number;
};

/**
 * From blocks at the microphone's own rate to frames at 16 kHz, by way of 48 kHz where the denoiser lives.
 * The denoiser answers one frame late, so the raw sound is held back by the same frame.
 */
export class FrontEnd {
  readonly #denoiser: Denoiser;
  readonly #toDenoiser: Resampler;
  readonly #cleanToEar = new Resampler(DENOISER_HZ, EAR_HZ);
  readonly #rawToEar = new Resampler(DENOISER_HZ, EAR_HZ);
  readonly #wide = new SampleQueue();
  readonly #clean = new SampleQueue();
  readonly #raw = new SampleQueue();
  readonly #voices: number[] = [];
  #heldRaw: Float32Array = new Float32Array(DENOISER_FRAME);

  constructor(denoiser: Denoiser, sampleRate: number) {
    this.#denoiser = denoiser;
    this.#toDenoiser = new Resampler(sampleRate, DENOISER_HZ);
  }

  push(block: Float32Array): readonly EarFrame[] {
    this.#wide.push(this.#toDenoiser.push(sanitise(block)));
    for (let frame = this.#wide.take(DENOISER_FRAME); frame; frame = this.#wide.take(DENOISER_FRAME)) {
      const { clean, voice } = this.#denoiser.process(frame);
      this.#clean.push(this.#cleanToEar.push(clean));
      this.#raw.push(this.#rawToEar.push(this.#heldRaw));
      this.#heldRaw = frame;
      this.#voices.push(voice);
    }
    return this.#frames();
  }

  #frames(): readonly EarFrame[] {
    const frames: EarFrame[] = [];
    while (this.#raw.length >= EAR_FRAME && this.#clean.length >= EAR_FRAME) {
      const raw = this.#raw.take(EAR_FRAME);
      const clean = this.#clean.take(EAR_FRAME);
      if (!raw || !clean) break;
      const loudness = loudnessOf(clean);
      frames.push({ raw, clean, voice: this.#voices.shift() ?? 0, loudness, removedDb: loudnessOf(raw) - loudness });
    }
    return frames;
  }
}
