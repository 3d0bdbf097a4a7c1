import type { Manner } from '../../core/language/grammar';

/**
 * Least confidence of the worst word, by what the command does. The library's confidence is near 1 for wrong words
 * too, so this catches only the worst; the grammar, the model's word for other speech and the vetoes do the rest.
 * Chosen, not measured: no model for people's speech was at hand.
 */
export const BARS: Readonly<Record<Manner, number>> = { stop: 0.3, harmless: 0.5, progress: 0.7, critical: 0.9 };

/** A command of one word carries little evidence: this share of what is left to certainty is asked on top. */
export const ONE_WORD = 0.5;

export const VETO = {
  /** Seconds a word. */
  shortest: 0.06,
  longest: 1.5,
  /** Quieter over the noise floor than this is not someone at the bench. Decibels. */
  leastSnrDb: 4,
} as const;
