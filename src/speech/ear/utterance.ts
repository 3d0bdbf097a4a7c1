import { EAR_FRAME, type EarFrame } from './front-end';
import type { Level } from './level-meter';

/** A frame counts as spoken from this probability of a voice on. */
const VOICED = 0.5;
/** So many clipped frames may be a knock at the microphone. */
const KNOCK = 3;
/** So many frames around the voice count with it where noise is told from a voice. */
const AROUND = 10;
/** Of the loudness of all voiced frames, in order, this far up stands the speaker's own: not the loudest, which may be a knock. */
const TYPICAL = 0.9;

/** What of an utterance is handed to the final decode, in ten-millisecond frames, and how far below his usual loudness a speaker drops. */
export type Trim = {
  readonly lead: number;
  readonly tail: number;
  readonly rangeDb: number;
  readonly mostRemovedDb: number;
};

/** One stretch of speech as it is collected: its sound, its loudness, and where in the stream it lies. */
export class Utterance {
  readonly startFrame: number;
  readonly #trim: Trim;
  readonly #blocks: Float32Array[] = [];
  readonly #voices: number[] = [];
  readonly #loudness: number[] = [];
  readonly #removed: number[] = [];
  #spoken: readonly boolean[] | null = null;
  #loudest = Number.NEGATIVE_INFINITY;
  #floor = 0;
  #clipped = 0;
  readonly #levels: number[] = [];

  constructor(startFrame: number, trim: Trim) {
    this.startFrame = startFrame;
    this.#trim = trim;
  }

  /** `samples` is what the decoder hears of the frame. */
  push({ voice, loudness, removedDb }: EarFrame, samples: Float32Array, level: Level): void {
    this.#blocks.push(samples);
    this.#voices.push(voice);
    this.#removed.push(removedDb);
    this.#loudness.push(loudness);
    this.#levels.push(level.db);
    this.#spoken = null;
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

  /** How many of its frames hold the speaker's voice. */
  get voicedFrames(): number {
    return this.#isSpoken().filter(Boolean).length;
  }

  /** How surely a voice, 0..1: the mean probability from the first voiced frame to the last. */
  get voice(): number {
    return mean(this.#voices.slice(this.#first, this.#end));
  }

  /** The mean probability of a voice over some frames of the trimmed sound, and how many of them hold one. */
  voiceIn(startFrame: number, frames: number): { readonly mean: number; readonly voicedFrames: number } {
    const from = this.#from + startFrame;
    return {
      mean: mean(this.#voices.slice(from, from + frames)),
      voicedFrames: this.#isSpoken()
        .slice(from, from + frames)
        .filter(Boolean).length,
    };
  }

  /** How far its loudest frame stands out of the room. */
  get snrDb(): number {
    return this.#loudest - this.#floor;
  }

  /**
   * How much of its sound, from just before the voice to just after it, the denoiser took off, in decibels: next to nothing of
   * whoever speaks into the microphone, even in noise, and most of what pans and taps leave that passes for a voice.
   */
  get removedDb(): number {
    const [from, end] = [Math.max(0, this.#first - AROUND), this.#end + AROUND];
    const cleaned = this.#loudness.slice(from, end);
    const captured = cleaned.map((db, index) => db + (this.#removed[from + index] ?? 0));
    return this.voicedFrames > 0 ? meanDb(captured) - meanDb(cleaned) : Number.POSITIVE_INFINITY;
  }

  /** Mean level of its voiced frames, and of the room under it, in decibels below full scale. */
  get levels(): { readonly voiceDb: number; readonly noiseDb: number } {
    const spoken = this.#isSpoken();
    return { voiceDb: mean(this.#levels.filter((_, frame) => spoken[frame])), noiseDb: this.#floor };
  }

  /** Whether the microphone gave all it could more than once: one knock is no loud voice. */
  get isClipped(): boolean {
    return this.#clipped > KNOCK;
  }

  /** Its sound without what lies well before the first voice and well after the last. */
  trimmed(): Float32Array {
    const blocks = this.#blocks.slice(this.#from, this.#end + this.#trim.tail);
    const all = new Float32Array(blocks.length * EAR_FRAME);
    for (const [index, block] of blocks.entries()) all.set(block, index * EAR_FRAME);
    return all;
  }

  get #first(): number {
    return Math.max(0, this.#isSpoken().indexOf(true));
  }

  get #end(): number {
    return this.#isSpoken().lastIndexOf(true) + 1;
  }

  get #from(): number {
    return Math.max(0, this.#first - this.#trim.lead);
  }

  /**
   * Pans, taps and distant talk are taken for a voice too. What the denoiser lets through of them is far below whoever
   * speaks into the microphone, so a frame is the speaker's only within some range of his usual loudness.
   */
  #isSpoken(): readonly boolean[] {
    if (this.#spoken) return this.#spoken;
    const voiced = this.#voices.map(
      (voice, frame) => voice >= VOICED && (this.#removed[frame] ?? 0) <= this.#trim.mostRemovedDb,
    );
    const loudness = this.#loudness.filter((_, frame) => voiced[frame]).toSorted((a, b) => a - b);
    const least = (loudness[Math.floor(TYPICAL * loudness.length)] ?? 0) - this.#trim.rangeDb;
    this.#spoken = voiced.map((isVoiced, frame) => isVoiced && (this.#loudness[frame] ?? least) >= least);
    return this.#spoken;
  }
}

const mean = (all: readonly number[]): number => all.reduce((sum, one) => sum + one, 0) / Math.max(1, all.length);

/** Of powers, as decibels. */
const meanDb = (all: readonly number[]): number => 10 * Math.log10(mean(all.map((db) => 10 ** (db / 10))));

/** The sound the decoder hears: the denoised with some of the captured mixed back in. */
export function mixed({ clean, raw }: EarFrame, wet: number): Float32Array {
  if (wet === 1) return clean;
  return clean.map((sample, index) => wet * sample + (1 - wet) * (raw[index] ?? 0));
}
