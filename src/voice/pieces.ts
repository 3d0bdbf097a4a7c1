import { type Breath, PLAIN_BREATH } from '../core/phrasing/breath';

/** The longest stretch of our own talk, in milliseconds, before the ear gets a turn. */
export const LONGEST_STRETCH_MS = 4000;
/** How long the ear gets, in milliseconds. */
export const LISTENING_GAP_MS = 600;

/** About how long a text takes to say, in milliseconds: fitted to the default speaker over workshop sentences. */
export const estimatedMs = (text: string, rate = 1): number => (250 + 66 * text.length) / rate;

/**
 * A reply in pieces that can each be said inside one stretch, broken where a reader would breathe: at the end of a
 * sentence first, then a clause, then before a joining word, and at a bare space only when nothing else is left.
 * Joined by spaces, the pieces are the text again.
 */
export function pieces(text: string, rate = 1, breath: Breath = PLAIN_BREATH): readonly string[] {
  const words = text.split(/\s+/).filter((word) => word !== '');
  return divided(words, (part) => estimatedMs(part, rate) <= LONGEST_STRETCH_MS, breath);
}

/** Two pieces of one that turned out too long when it was measured, or nothing when it is a single word. */
export function halves(piece: string, breath: Breath = PLAIN_BREATH): readonly [string, string] | null {
  const words = piece.split(' ');
  const at = bestBreak(words, () => true, breath);
  return at === null ? null : [words.slice(0, at).join(' '), words.slice(at).join(' ')];
}

type Fits = (text: string) => boolean;

function divided(words: readonly string[], fits: Fits, breath: Breath): readonly string[] {
  const text = words.join(' ');
  if (words.length === 0) return [];
  if (fits(text)) return [text];
  const at = bestBreak(words, fits, breath);
  if (at === null) return [text];
  return [words.slice(0, at).join(' '), ...divided(words.slice(at), fits, breath)];
}

/**
 * Where to break: the strongest kind of break that leaves a head that fits, and of those the last, so that as much as
 * possible is said together. When no head fits, the first word goes alone.
 */
function bestBreak(words: readonly string[], fits: Fits, breath: Breath): number | null {
  if (words.length < 2) return null;
  let best = 1;
  let bestStrength = -1;
  for (let at = 1; at < words.length && fits(words.slice(0, at).join(' ')); at++) {
    const strength = strengthOf(words[at - 1] ?? '', words[at] ?? '', breath);
    if (strength >= bestStrength) {
      best = at;
      bestStrength = strength;
    }
  }
  return best;
}

function strengthOf(before: string, after: string, { before: joining, figures }: Breath): number {
  if (/[.!?]['"]?$/.test(before)) return 4;
  if (/[;:,]$/.test(before)) return 3;
  if (joining.has(after)) return 2;
  const isFigure = (word: string): boolean => /^\d[\d.]*$/.test(word) || word.split('-').every((w) => figures.has(w));
  return isFigure(before) || isFigure(after) ? 0 : 1;
}
