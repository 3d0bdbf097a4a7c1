import type { Manner } from '../../core/language/grammar';
import type { EngineSettings } from './engine';
import type { Filler } from './fsg';
import type { GateSettings } from './speech-gate';
import type { Trim } from './utterance';

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
  /** Voiced frames in all, and for each phone of the words: fewer cannot be that phrase, more hold other words as well. */
  readonly leastVoicedFrames: number;
  readonly leastFramesPerPhone: number;
  readonly mostFramesPerPhone: number;
  /** Quieter over the noise floor than this is not someone at the bench. */
  readonly leastSnrDb: number;
  /** Where the denoiser took off more than this, in decibels, there was no voice: not even decoded. */
  readonly mostRemovedDb: number;
  /** Less surely a voice than this, on the average over the utterance, is a noise; for a stop the bars are lower. */
  readonly leastVoice: number;
  readonly leastStopVoice: number;
  readonly leastStopFrames: number;
  /** The same over any one word of a command. */
  readonly leastWordVoice: number;
  /** Less of the voice than this in the words, and the rest of what was said is missing from them. */
  readonly leastCovered: number;
};

/** What a second search, for a stop and nothing else, must find in an utterance that was refused. */
export type LoneStopBars = {
  readonly bar: number;
  /** How long the whole utterance and the word may be. */
  readonly longestFrames: number;
  readonly longestWordFrames: number;
  /** The voice in the word: its frames, their share of all there is, and how surely it was one over the utterance. */
  readonly leastVoicedFrames: number;
  readonly leastShare: number;
  readonly leastVoice: number;
};

export type Tuning = {
  readonly engine: EngineSettings;
  /** What replaces the model's feature settings. */
  readonly features: EngineSettings;
  /** How much of the denoised sound the decoder hears; the rest is the sound as captured. */
  readonly wet: number;
  readonly gate: GateSettings;
  readonly timing: Timing;
  /** What stays of the quiet around the voice in the final decode: noise there is easily taken for a word. */
  readonly trim: Trim;
  /** The loop that competes with the commands, and the lone loop that the commands are compared with. */
  readonly filler: Filler;
  readonly loop: Filler;
  /** What a word's own cost counts beside its cost over the lone loop. */
  readonly ownCost: number;
  /** The dearest that passes, by what the command does. */
  readonly bars: Readonly<Record<Manner, number>>;
  /** A command of one word carries little evidence: its bar is lower by this much. */
  readonly oneWord: Readonly<Record<Manner, number>>;
  /**
   * In noise words are mistaken for others that fit almost as well. Every bar is lower by `eachDb` for each decibel that the
   * denoiser took off beyond `fromDb`, and by no more than `most`; for words with a number, a name or a choice by `value` more.
   */
  readonly inNoise: { readonly fromDb: number; readonly eachDb: number; readonly most: number; readonly value: number };
  /**
   * With a person's profile the bars are lower by this. That person's words come as much nearer to the model, and so do
   * some of a stranger's, who shall gain nothing by it.
   */
  readonly aided: Readonly<Record<Manner, number>>;
  /**
   * How far behind the best sentence of another meaning must be, in the engine's unit over the whole utterance: all of it at
   * scores up to `leadBelow`, less above, and nothing at a score of one.
   */
  readonly leastLead: Readonly<Record<Manner, number>>;
  readonly leadBelow: number;
  /** Where the denoiser took off more than `fromDb`: so many times as far, and at any score at least `always`. */
  readonly leadInNoise: { readonly fromDb: number; readonly times: number; readonly always: number };
  /** How much cheaper than its bar a command must be to count as all but certain. */
  readonly spread: number;
  readonly veto: Veto;
  readonly loneStop: LoneStopBars;
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
    // Scores are counted from the best sound unit of each frame. Only when all units are computed, and not just those
    // a graph can reach, do scores from different graphs compare: the lone loop's with the commands'.
    compallsen: true,
  },
  // The engine's own noise removal would denoise a second time.
  features: { remove_noise: 0 },
  wet: 1,
  gate: {
    voiceAtLeast: 0.5,
    aboveFloorDb: 3,
    mostRemovedDb: 9,
    startFrames: 6,
    windowFrames: 12,
    quietFrames: 15,
    rangeDb: 25,
    rise: 6,
    fall: 0.02,
  },
  trim: { lead: 35, tail: 20, rangeDb: 22, mostRemovedDb: 9 },
  timing: {
    opening: 50,
    afterMute: 25,
    ignoreAtMost: 200,
    preRoll: 35,
    waitComplete: 30,
    waitOpen: 45,
    waitNumber: 70,
    earlyStable: 20,
    earlyQuiet: 12,
    partialEvery: 5,
    levelEvery: 10,
    longest: 800,
  },
  filler: { entry: -80, each: -6 },
  loop: { entry: 0, each: 0 },
  ownCost: 0.6,
  bars: { stop: 50, harmless: 43, progress: 42, critical: 40 },
  oneWord: { stop: 0, harmless: 2, progress: 7, critical: 7 },
  inNoise: { fromDb: 0.7, eachDb: 8, most: 8, value: 6 },
  aided: { stop: 0, harmless: 0, progress: 2, critical: 2 },
  leastLead: { stop: 0, harmless: 120, progress: 320, critical: 320 },
  leadBelow: 0.7,
  leadInNoise: { fromDb: 0.12, times: 1.4, always: 250 },
  spread: 20,
  veto: {
    leastVoicedFrames: 16,
    leastFramesPerPhone: 3,
    mostFramesPerPhone: 20,
    leastSnrDb: 4,
    mostRemovedDb: 4,
    leastVoice: 0.55,
    leastStopVoice: 0.52,
    leastStopFrames: 10,
    leastWordVoice: 0.12,
    leastCovered: 0.5,
  },
  loneStop: {
    bar: 52,
    longestFrames: 130,
    longestWordFrames: 90,
    leastVoicedFrames: 11,
    leastShare: 0.8,
    leastVoice: 0.48,
  },
};

/** The tuning for an ear that is fitted to somebody's voice. */
export function aidedTuning(tuning: Tuning): Tuning {
  const { stop, harmless, progress, critical } = tuning.bars;
  const { aided } = tuning;
  return {
    ...tuning,
    bars: {
      stop: stop - aided.stop,
      harmless: harmless - aided.harmless,
      progress: progress - aided.progress,
      critical: critical - aided.critical,
    },
  };
}
