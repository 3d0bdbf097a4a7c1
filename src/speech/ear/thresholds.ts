import type { Manner } from '../../core/language/grammar';
import type { EngineSettings } from './engine';
import type { GateSettings } from './speech-gate';

/**
 * Every figure the ear decides by, for every room and every command: one file, changed only with the speech benchmark
 * run again (tests/real-speech/RESULTS.md says what each setting scored).
 */

/** The engine's own settings. Its default beams are far too narrow for a noisy room. */
export const ENGINE: EngineSettings = {
  loglevel: 'FATAL',
  samprate: 16_000,
  beam: 1e-120,
  pbeam: 1e-120,
  wbeam: 1e-100,
  wip: 0.2,
  dither: true,
  seed: 1,
};

/** What replaces the model's feature settings. The engine's own noise removal would denoise a second time. */
export const FEATURES: EngineSettings = { remove_noise: 0 };

/** How much of the denoised sound the decoder hears; the rest is the sound as captured. */
export const WET = 1;

export const GATE: GateSettings = { voiceAtLeast: 0.5, aboveFloorDb: 3, startFrames: 6, windowFrames: 12 };

/** In ten-millisecond frames. */
export const TIMING = {
  /** Thrown away after a microphone opens: its first sound is a click and an unsettled gain. */
  opening: 50,
  /** Still deaf after the voice has ended: the room and the loudspeaker ring on. */
  afterMute: 25,
  /** Handed to the decoder from before the gate opened. */
  preRoll: 35,
  /** Pause that ends an utterance which nothing could extend, which something could, and which may be a number. */
  waitComplete: 30,
  waitOpen: 45,
  waitNumber: 70,
  /** An early answer wants the same words for this long, and this much quiet after them. */
  earlyStable: 20,
  earlyQuiet: 12,
  partialEvery: 5,
  levelEvery: 10,
  longest: 800,
} as const;

/** Weights of the phone loop beside the commands: the first decides, the second gives a second opinion. */
export const FILLER = { weight: 1e-20, second: 1e-10 } as const;

export type Bar = {
  /** Dearest mean cost a frame, and dearest single word, that still passes. */
  readonly cost: number;
  readonly worstWord: number;
  /** How much dearer than a bare phone loop the words may be, in cost a frame. */
  readonly overLoop: number;
  /** The second opinion must agree. */
  readonly agree: boolean;
};

/** How well a command must be heard, by what it does. A false stop is cheap, a missed one is not. */
export const BARS: Readonly<Record<Manner, Bar>> = {
  stop: { cost: 120, worstWord: 200, overLoop: 60, agree: false },
  harmless: { cost: 80, worstWord: 150, overLoop: 25, agree: false },
  progress: { cost: 70, worstWord: 130, overLoop: 20, agree: false },
  critical: { cost: 65, worstWord: 120, overLoop: 15, agree: true },
};

/** A command of one word carries little evidence, so its bars are this much of the others. */
export const ONE_WORD = 0.8;

export const VETO = {
  /** Speech shorter than this a phone, or longer, is not that phrase. Frames. */
  leastFramesPerPhone: 3,
  longestWord: 150,
  /** Quieter over the noise floor than this is not someone at the bench. */
  leastSnrDb: 4,
} as const;
