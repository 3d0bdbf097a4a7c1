import { type ClockHours, clockAt, type MarkVerdict, markVerdict } from '../fastening/clock';
import { degrees } from '../fastening/quantity';
import type { Pass } from '../procedure/procedure';
import { marksCarryOn } from './plan';

/**
 * Where a fastener's mark, put at twelve o'clock, points before and after pass `index`, in degrees clockwise.
 * Counted from the pass in which the marks were made.
 */
export function markDegrees(
  passes: readonly Pass[],
  index: number,
): { readonly before: number; readonly after: number } {
  const bolts = passes[index]?.order ?? [];
  const isOfThese = (p: Pass | undefined): boolean => p?.order.some((n) => bolts.includes(n)) ?? false;
  let first = index;
  while (marksCarryOn(passes, first)) {
    first -= 1;
    while (first > 0 && !isOfThese(passes[first])) first -= 1;
  }
  const turned = (upTo: number): number =>
    passes.slice(first, upTo).reduce((sum, p) => sum + (p.kind === 'angle' && isOfThese(p) ? p.degrees : 0), 0);
  return { before: turned(index) % 360, after: turned(index + 1) % 360 };
}

/** Half an hour on the clock: a mark named by the full hour is read no closer. */
const TOLERANCE = degrees(15);

export type MarkProof =
  | { readonly kind: MarkVerdict['kind'] }
  /** On the way from the one place to the other: so many degrees of this pass have been given. */
  | { readonly kind: 'partly-turned'; readonly degrees: number };

/**
 * What a mark at this hour proves about one bolt in pass `index`. Between the two places it proves a part of the angle:
 * the sum that was reported before the doubt where the mark stands there, or else what the hour itself says. The rest is
 * turned to where the mark must end, so nothing is given by guess.
 */
export function markProof(passes: readonly Pass[], index: number, hour: number, had: number): MarkProof {
  const { before, after } = markDegrees(passes, index);
  const points = degrees(hour * 30);
  const { kind } = markVerdict(points, degrees(before), degrees(after), TOLERANCE);
  if (kind !== 'elsewhere') return { kind };
  const pass = passes[index];
  const given = (points - before + 360) % 360;
  if (pass?.kind !== 'angle' || given >= pass.degrees) return { kind };
  return { kind: 'partly-turned', degrees: Math.abs(given - had) <= TOLERANCE ? had : given };
}

export const clockOf = (clockwise: number): ClockHours => clockAt(degrees(clockwise));
