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
export function pieces(text: string, rate = 1): readonly string[] {
  const words = text.split(/\s+/).filter((word) => word !== '');
  return divided(words, (part) => estimatedMs(part, rate) <= LONGEST_STRETCH_MS);
}

/** Two pieces of one that turned out too long when it was measured, or nothing when it is a single word. */
export function halves(piece: string): readonly [string, string] | null {
  const words = piece.split(' ');
  const at = bestBreak(words, () => true);
  return at === null ? null : [words.slice(0, at).join(' '), words.slice(at).join(' ')];
}

function divided(words: readonly string[], fits: (text: string) => boolean): readonly string[] {
  const text = words.join(' ');
  if (words.length === 0) return [];
  if (fits(text)) return [text];
  const at = bestBreak(words, fits);
  if (at === null) return [text];
  return [words.slice(0, at).join(' '), ...divided(words.slice(at), fits)];
}

/**
 * Where to break: the strongest kind of break that leaves a head that fits, and of those the last, so that as much as
 * possible is said together. When no head fits, the first word goes alone.
 */
function bestBreak(words: readonly string[], fits: (text: string) => boolean): number | null {
  if (words.length < 2) return null;
  let best = 1;
  let bestStrength = -1;
  for (let at = 1; at < words.length && fits(words.slice(0, at).join(' ')); at++) {
    const strength = strengthOf(words[at - 1] ?? '', words[at] ?? '');
    if (strength >= bestStrength) {
      best = at;
      bestStrength = strength;
    }
  }
  return best;
}

/** Words a listener expects a breath before. English; a second language brings its own. */
const JOINING = new Set(['and', 'or', 'but', 'then', 'until', 'before', 'after', 'while', 'when', 'with', 'from']);

/** Words that belong to the figure before or after them: "forty | newton metres" is heard as two things. */
const FIGURE =
  /^(zero|one|two|three|four|five|six|seven|eight|nine|ten|\w+teen|eleven|twelve|(twen|thir|for|fif|six|seven|eigh|nine)ty(-\w+)?|hundred|thousand|thou|point|half|quarter|newton|pounds?|degrees?|millimet\w+|met\w+|\d[\d.]*)$/;

function strengthOf(before: string, after: string): number {
  if (/[.!?]['"]?$/.test(before)) return 4;
  if (/[;:,]$/.test(before)) return 3;
  if (JOINING.has(after)) return 2;
  return FIGURE.test(before) || FIGURE.test(after) ? 0 : 1;
}
