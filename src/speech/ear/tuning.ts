import type { Manner } from '../../core/language/grammar';
import type { EngineSettings } from './engine';
import type { Filler } from './fsg';
import type { GateSettings } from './speech-gate';

/** How well a command must be heard. Costs are in the engine's unit a frame: a good word pays about 20. */
export type Bar = {
  /** Dearest mean over the words, and dearest single word, that still passes. */
  readonly cost: number;
  readonly worstWord: number;
  /** How much dearer than a bare phone loop the words may be; below zero, how much cheaper they must be. */
  readonly overLoop: number;
};

/** In ten-millisecond frames. */
export type Timing = {
  /** Thrown away after a microphone opens: its first sound is a click and an unsettled gain. */
  readonly opening: number;
  /** Still deaf after the voice has ended: the room and the loudspeaker ring on. */
  readonly afterMute: number;
  /** Speech that began before then is dropped, but not for longer than this: a noisy room may never be quiet. */
  readonly ignoreAtMost: number;
  /** Handed to the decoder from before the gate opened. */
  readonly preRoll: number;
  /** What stays of the quiet after the last voice in the final decode: noise there is easily taken for a word. */
  readonly tail: number;
  /** Pauses that end an utterance: one that nothing could extend, one that something could, and one that may be a number. */
  readonly waitComplete: number;
  readonly waitOpen: number;
  readonly waitNumber: number;
  /** An early answer wants the same words for this long, and this much quiet after them. */
  readonly earlyStable: number;
  readonly earlyQuiet: number;
  readonly partialEvery: number;
  readonly levelEvery: number;
  readonly longest: number;
};

export type Veto = {
  readonly leastFramesPerPhone: number;
  readonly longestWord: number;
  /** Quieter over the noise floor than this is not someone at the bench. */
  readonly leastSnrDb: number;
};

export type Tuning = {
  readonly engine: EngineSettings;
  /** What replaces the model's feature settings. */
  readonly features: EngineSettings;
  /** How much of the denoised sound the decoder hears; the rest is the sound as captured. */
  readonly wet: number;
  readonly gate: GateSettings;
  readonly timing: Timing;
  /** The loop that competes with the commands, and the lone loop that the commands are compared with. */
  readonly filler: Filler;
  readonly loop: Filler;
  readonly bars: Readonly<Record<Manner, Bar>>;
  /** A command of one word carries little evidence: its bars are lower by this much a frame. */
  readonly oneWord: number;
  readonly veto: Veto;
};

/**
 * Every figure the ear decides by, for every room and every command: one place, changed only with the speech benchmark
 * run again (tests/real-speech/RESULTS.md says what was tried and what it scored).
 */
export const TUNING: Tuning = {
  // The engine's default beams are far too narrow for a noisy room; its default seed is random.
  engine: {
    loglevel: 'FATAL',
    samprate: 16_000,
    beam: 1e-120,
    pbeam: 1e-120,
    wbeam: 1e-100,
    wip: 0.2,
    dither: true,
    seed: 1,
  },
  // The engine's own noise removal would denoise a second time.
  features: { remove_noise: 0 },
  wet: 0.7,
  gate: { voiceAtLeast: 0.5, aboveFloorDb: 3, startFrames: 6, windowFrames: 12, quietFrames: 15 },
  timing: {
    opening: 50,
    afterMute: 25,
    ignoreAtMost: 200,
    preRoll: 35,
    tail: 20,
    waitComplete: 30,
    waitOpen: 45,
    waitNumber: 70,
    earlyStable: 20,
    earlyQuiet: 12,
    partialEvery: 5,
    levelEvery: 10,
    longest: 800,
  },
  filler: { entry: -46, each: -3.7 },
  loop: { entry: 0, each: 0 },
  bars: {
    stop: { cost: 120, worstWord: 200, overLoop: 60 },
    harmless: { cost: 80, worstWord: 150, overLoop: 25 },
    progress: { cost: 70, worstWord: 130, overLoop: 20 },
    critical: { cost: 65, worstWord: 120, overLoop: 15 },
  },
  oneWord: 5,
  veto: { leastFramesPerPhone: 3, longestWord: 150, leastSnrDb: 4 },
};
