import type { Manner } from '../../core/language/grammar';
import type { RejectReason } from '../../core/ports';
import type { Tuning, Veto } from './tuning';

/** All that speaks for and against taking some words for a command. */
export type Evidence = {
  readonly manner: Manner;
  readonly wordCount: number;
  /** Whether they hold a number, a name or a choice, which a syllable makes another. */
  readonly hasValue: boolean;
  /** How badly the words fit the sound, a frame, in the engine's unit: a good word pays about 20, stray speech 60. */
  readonly cost: number;
  /** How much dearer they are, a frame, than a loop of bare phones on the same sound; below zero where cheaper. */
  readonly overLoop: number;
  /** Voiced frames of the utterance, and for each phone of the words. */
  readonly voicedFrames: number;
  readonly framesPerPhone: number;
  readonly snrDb: number;
  /** How much of the sound the denoiser took off, in decibels: how deep in noise the words lie. */
  readonly removedDb: number;
  /** How surely there was a voice at all, 0..1, and in the word where it was least sure. */
  readonly voice: number;
  readonly leastWordVoice: number;
  /** The share of the voiced frames that lie in the words; the rest was taken for noise between them. */
  readonly covered: number;
};

/** Either way with a score of 0..1, where one half is the bar itself. */
export type Verdict =
  | { readonly accepted: true; readonly score: number }
  | { readonly accepted: false; readonly score: number; readonly why: RejectReason };

export type RejectionTuning = Pick<Tuning, 'ownCost' | 'bars' | 'oneWord' | 'inNoise' | 'spread' | 'veto'>;

/** The one place where sound in the shape of a command is still refused. Pure, so that it can be measured and replayed. */
export function judge(evidence: Evidence, tuning: RejectionTuning): Verdict {
  const score = scoreOf(evidence, tuning);
  const why = vetoOf(tuning.veto, evidence);
  if (why) return { accepted: false, score: Math.min(score, 0.5), why };
  return score < 0.5 ? { accepted: false, score, why: 'score' } : { accepted: true, score };
}

/**
 * A stop is exempt from level and length: it may be whispered, or shouted over other words, but must be a voice. Of
 * anything else every word must be: a lone "nine" is easily taken for "set at nine" with "set at" laid over the quiet.
 */
function vetoOf(veto: Veto, evidence: Evidence): RejectReason | null {
  const { manner, voicedFrames, framesPerPhone, snrDb, voice } = evidence;
  if (manner === 'stop') return voice < veto.leastStopVoice || voicedFrames < veto.leastStopFrames ? 'score' : null;
  if (voice < veto.leastVoice || evidence.leastWordVoice < veto.leastWordVoice) return 'score';
  if (evidence.covered < veto.leastCovered) return 'score';
  if (voicedFrames < veto.leastVoicedFrames) return 'too-short';
  if (framesPerPhone < veto.leastFramesPerPhone) return 'too-short';
  if (framesPerPhone > veto.mostFramesPerPhone) return 'too-long';
  return snrDb < veto.leastSnrDb ? 'too-quiet' : null;
}

/** By how much the bar is lower in so much noise. */
export function loweredInNoise(removedDb: number, hasValue: boolean, tuning: Tuning['inNoise']): number {
  const { fromDb, eachDb, most, value } = tuning;
  if (removedDb <= fromDb) return 0;
  return Math.min(most, (removedDb - fromDb) * eachDb) + (hasValue ? value : 0);
}

function scoreOf(evidence: Evidence, tuning: RejectionTuning): number {
  const { manner, wordCount, hasValue, cost, overLoop, removedDb } = evidence;
  const oneWord = wordCount === 1 ? tuning.oneWord[manner] : 0;
  const lowered = oneWord + loweredInNoise(removedDb, hasValue, tuning.inNoise);
  const room = tuning.bars[manner] - lowered - (overLoop + tuning.ownCost * cost);
  return Math.max(0, Math.min(1, 0.5 + room / (2 * tuning.spread)));
}
