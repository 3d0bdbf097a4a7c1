import { type Degrees, degrees } from './quantity';

/** A clock position of a mark, in hours from 1 to 12.5 in steps of a half: 12 is straight up, 4.5 is half past four. */
export type ClockHours = number;

const DEGREES_AN_HOUR = 30;

/** The clock position nearest to an angle in degrees, clockwise from twelve. */
export function clockAt(angle: Degrees): ClockHours {
  const hours = (Math.round((2 * angle) / DEGREES_AN_HOUR) / 2) % 12;
  const positive = hours < 0 ? hours + 12 : hours;
  return positive < 1 ? positive + 12 : positive;
}

/** The angle of a clock position in degrees, 0 to 345. */
export const angleAt = (clock: ClockHours): Degrees => degrees((clock % 12) * DEGREES_AN_HOUR);

/** The shorter way round between two directions, 0 to 180 degrees. */
export function between(a: Degrees, b: Degrees): Degrees {
  const around = Math.abs(a - b) % 360;
  return degrees(Math.min(around, 360 - around));
}

export type MarkVerdict =
  /** The mark points where this pass leaves it. */
  | { readonly kind: 'turned' }
  /** It points where the pass found it. */
  | { readonly kind: 'not-turned' }
  /** Somewhere else: partly turned, overshot, or the wrong mark. */
  | { readonly kind: 'elsewhere'; readonly off: Degrees }
  /** The pass brings the mark back to where it was, so its place proves nothing. */
  | { readonly kind: 'cannot-tell' };

/**
 * What a mark proves about a pass: where it points, where the pass found it and where it should leave it, all in
 * degrees clockwise from twelve. `tolerance` is how near counts as there; half an hour is 15 degrees.
 */
export function markVerdict(points: Degrees, before: Degrees, after: Degrees, tolerance: Degrees): MarkVerdict {
  if (between(before, after) <= 2 * tolerance) return { kind: 'cannot-tell' };
  const off = between(points, after);
  if (off <= tolerance) return { kind: 'turned' };
  return between(points, before) <= tolerance ? { kind: 'not-turned' } : { kind: 'elsewhere', off };
}
