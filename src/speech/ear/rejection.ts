import type { Manner } from '../../core/language/grammar';
import type { RejectReason } from '../../core/ports';
import { BARS, type Bar, ONE_WORD, VETO } from './thresholds';

/** All that speaks for and against taking some words for a command. */
export type Evidence = {
  readonly manner: Manner;
  readonly wordCount: number;
  /** Mean cost a frame over the words, and that of the worst word. */
  readonly cost: number;
  readonly worstWord: number;
  /** Cost a frame above what a bare phone loop pays for the same sound; null where it was not asked. */
  readonly overLoop: number | null;
  /** Whether a decode with a stronger filler found the same words; null where it was not asked. */
  readonly agrees: boolean | null;
  readonly framesPerPhone: number;
  readonly longestWord: number;
  readonly snrDb: number;
};

/** Either way with a score of 0..1, where one half is the bar itself. */
export type Verdict =
  | { readonly accepted: true; readonly score: number }
  | { readonly accepted: false; readonly score: number; readonly why: RejectReason };

/** The one place where sound in the shape of a command is still refused. Pure, so that it can be measured and replayed. */
export function judge(evidence: Evidence): Verdict {
  const bar = barFor(evidence);
  const score = scoreUnder(bar, evidence);
  const veto = evidence.manner === 'stop' ? null : vetoOf(evidence);
  if (veto) return { accepted: false, score: Math.min(score, 0.5), why: veto };
  const refused = score < 0.5 || (bar.agree && evidence.agrees === false);
  return refused ? { accepted: false, score: Math.min(score, 0.5), why: 'score' } : { accepted: true, score };
}

function barFor({ manner, wordCount }: Evidence): Bar {
  const bar = BARS[manner];
  if (wordCount > 1 || manner === 'stop') return bar;
  return {
    ...bar,
    cost: bar.cost * ONE_WORD,
    worstWord: bar.worstWord * ONE_WORD,
    overLoop: bar.overLoop * ONE_WORD,
  };
}

function vetoOf({ framesPerPhone, longestWord, snrDb }: Evidence): RejectReason | null {
  if (framesPerPhone < VETO.leastFramesPerPhone) return 'too-short';
  if (longestWord > VETO.longestWord) return 'too-long';
  if (snrDb < VETO.leastSnrDb) return 'too-quiet';
  return null;
}

/** The weakest of the three measures decides: 1 at no cost, one half at the bar, 0 at twice the bar. */
function scoreUnder(bar: Bar, { cost, worstWord, overLoop }: Evidence): number {
  const shares = [cost / bar.cost, worstWord / bar.worstWord, (overLoop ?? 0) / bar.overLoop];
  return Math.max(0, 1 - Math.max(0, ...shares) / 2);
}
