import type { Manner } from '../../core/language/grammar';
import type { RejectReason } from '../../core/ports';
import type { Bar, Tuning, Veto } from './tuning';

/** All that speaks for and against taking some words for a command. Costs as in `Bar`. */
export type Evidence = {
  readonly manner: Manner;
  readonly wordCount: number;
  readonly cost: number;
  readonly worstWord: number;
  readonly overLoop: number;
  readonly frames: number;
  readonly framesPerPhone: number;
  readonly longestWord: number;
  readonly snrDb: number;
  /** How surely there was a voice at all, 0..1. */
  readonly voice: number;
};

/** Either way with a score of 0..1, where one half is the bar itself. */
export type Verdict =
  | { readonly accepted: true; readonly score: number }
  | { readonly accepted: false; readonly score: number; readonly why: RejectReason };

/** The one place where sound in the shape of a command is still refused. Pure, so that it can be measured and replayed. */
export function judge(evidence: Evidence, tuning: Pick<Tuning, 'bars' | 'oneWord' | 'veto'>): Verdict {
  const { manner, wordCount } = evidence;
  const lowered = wordCount === 1 && manner !== 'stop' ? tuning.oneWord : 0;
  const score = scoreUnder(tuning.bars[manner], lowered, evidence);
  const why = manner === 'stop' ? null : vetoOf(tuning.veto, evidence);
  if (why) return { accepted: false, score: Math.min(score, 0.5), why };
  return score < 0.5 ? { accepted: false, score, why: 'score' } : { accepted: true, score };
}

function vetoOf(veto: Veto, { framesPerPhone, longestWord, snrDb }: Evidence): RejectReason | null {
  if (framesPerPhone < veto.leastFramesPerPhone) return 'too-short';
  if (longestWord > veto.longestWord) return 'too-long';
  if (snrDb < veto.leastSnrDb) return 'too-quiet';
  return null;
}

/** Costs below the bar that make a command certain, and above it that make it hopeless. */
const SPREAD = 40;

/** The weakest of the three measures decides, by how far it lies under its bar. */
function scoreUnder(bar: Bar, lowered: number, { cost, worstWord, overLoop }: Evidence): number {
  const room = Math.min(bar.cost - cost, (bar.worstWord - worstWord) / 2, bar.overLoop - overLoop) - lowered;
  return Math.max(0, Math.min(1, 0.5 + room / (2 * SPREAD)));
}
