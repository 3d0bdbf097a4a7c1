import { EAR_FRAME, type EarFrame } from './front-end';
import type { Level } from './level-meter';

/** A frame counts as spoken from this probability of a voice on. */
const VOICED = 0.5;
/** So many clipped frames may be a knock at the microphone. */
const KNOCK = 3;

/** One stretch of speech as it is collected: its sound, its loudness, and where in the stream it lies. */
export class Utterance {
  readonly startFrame: number;
  readonly #blocks: Float32Array[] = [];
  readonly #voices: number[] = [];
  #lastVoiced = 0;
  #loudest = Number.NEGATIVE_INFINITY;
  #floor = 0;
  #clipped = 0;
  #voicedDb = 0;

  constructor(startFrame: number) {
    this.startFrame = startFrame;
  }

  push(samples: Float32Array, level: Level, voice: number): void {
    this.#blocks.push(samples);
    this.#voices.push(voice);
    if (voice >= VOICED) {
      this.#lastVoiced = this.#blocks.length;
      this.#voicedDb += level.db;
    }
    if (level.clipped) this.#clipped += 1;
    this.#loudest = Math.max(this.#loudest, level.db);
    this.#floor = level.floorDb;
  }

  get endFrame(): number {
    return this.startFrame + this.#blocks.length;
  }

  get frames(): number {
    return this.#blocks.length;
  }

  /** How many of its frames hold a voice. */
  get voicedFrames(): number {
    return this.#voices.filter((voice) => voice >= VOICED).length;
  }

  /** How surely a voice, 0..1: the mean probability from the first voiced frame to the last. */
  get voice(): number {
    const spoken = this.#voices.slice(
      this.#voices.findIndex((voice) => voice >= VOICED),
      this.#lastVoiced,
    );
    return spoken.reduce((sum, voice) => sum + voice, 0) / Math.max(1, spoken.length);
  }

  /** The mean probability of a voice over some of its frames, and how many of them hold one. */
  voiceIn(startFrame: number, frames: number): { readonly mean: number; readonly voicedFrames: number } {
    const within = this.#voices.slice(startFrame, startFrame + frames);
    return {
      mean: within.reduce((sum, voice) => sum + voice, 0) / Math.max(1, within.length),
      voicedFrames: within.filter((voice) => voice >= VOICED).length,
    };
  }

  /** How far its loudest frame stands out of the room. */
  get snrDb(): number {
    return this.#loudest - this.#floor;
  }

  /** Mean level of its voiced frames, and of the room under it, in decibels below full scale. */
  get loudness(): { readonly voiceDb: number; readonly noiseDb: number } {
    return { voiceDb: this.#voicedDb / Math.max(1, this.voicedFrames), noiseDb: this.#floor };
  }

  /** Whether the microphone gave all it could more than once: one knock is no loud voice. */
  get isClipped(): boolean {
    return this.#clipped > KNOCK;
  }

  /** Its sound up to so many frames after the last voice. */
  trimmed(tail: number): Float32Array {
    const blocks = this.#blocks.slice(0, this.#lastVoiced + tail);
    const all = new Float32Array(blocks.length * EAR_FRAME);
    for (const [index, block] of blocks.entries()) all.set(block, index * EAR_FRAME);
    return all;
  }
}

/** The sound the decoder hears: the denoised with some of the captured mixed back in. */
export function mixed({ clean, raw }: EarFrame, wet: number): Float32Array {
  if (wet === 1) return clean;
  return clean.map((sample, index) => wet * sample + (1 - wet) * (raw[index] ?? 0));
}
