import { type Millimetres, millimetres } from '../fastening/quantity';
import { steady } from '../fastening/steady';
import { fail, ok, type Result } from '../result';

/** The six lines a straightedge is laid along: both long edges, both ends, both diagonals. */
export const FLATNESS_LINES = ['long-edge-1', 'long-edge-2', 'end-1', 'end-2', 'diagonal-1', 'diagonal-2'] as const;
export type FlatnessLine = (typeof FLATNESS_LINES)[number];

/** A fixed gap in mm, or a gap for each mm of the line measured. */
export type FlatnessLimit =
  | { readonly kind: 'fixed'; readonly most: Millimetres }
  | { readonly kind: 'per-span'; readonly each: number };

/** Whose limit it is, and for which direction. Many makers give one for all; some are stricter across than along. */
export type FlatnessRule = {
  readonly name: string;
  readonly whose: string;
  readonly along: FlatnessLimit;
  readonly across: FlatnessLimit;
};

/** The length and the width of the face, in mm. Diagonals follow. */
export type Face = { readonly length: Millimetres; readonly width: Millimetres };

export type FlatnessVerdict = {
  /** The line that decides: the one nearest to its limit or farthest over it. */
  readonly worst: FlatnessLine;
  readonly gap: Millimetres;
  readonly limit: Millimetres;
  readonly within: boolean;
  readonly rule: FlatnessRule;
};

export type FlatnessError =
  | { readonly code: 'lines-missing'; readonly missing: readonly FlatnessLine[] }
  | { readonly code: 'negative-gap'; readonly line: FlatnessLine; readonly given: number };

/**
 * Judges six feeler-gauge readings, in mm, by a named rule; the worst line decides and a gap at the limit is within.
 * Diagonals are judged as the long direction. Errors: `lines-missing`, `negative-gap`. Source: common practice.
 */
export function flatnessVerdict(
  gaps: ReadonlyMap<FlatnessLine, Millimetres>,
  rule: FlatnessRule,
  face: Face,
): Result<FlatnessVerdict, FlatnessError> {
  const missing = FLATNESS_LINES.filter((line) => !gaps.has(line));
  if (missing.length > 0) return fail({ code: 'lines-missing', missing });
  const judged = [...gaps].map(([line, gap]) => ({ line, gap, limit: limitOn(line, rule, face) }));
  const negative = judged.find(({ gap }) => !(gap >= 0));
  if (negative) return fail({ code: 'negative-gap', line: negative.line, given: negative.gap });
  const worst = judged.reduce((a, b) => (b.gap / b.limit > a.gap / a.limit ? b : a));
  return ok({
    worst: worst.line,
    gap: worst.gap,
    limit: worst.limit,
    within: steady(worst.gap) <= steady(worst.limit),
    rule,
  });
}

/** The limit on one line in mm. A rule for each mm of span is measured along that very line. */
export function limitOn(line: FlatnessLine, rule: FlatnessRule, face: Face): Millimetres {
  const isEnd = line === 'end-1' || line === 'end-2';
  const isDiagonal = line === 'diagonal-1' || line === 'diagonal-2';
  const span = isEnd ? face.width : isDiagonal ? Math.hypot(face.length, face.width) : face.length;
  const limit = isEnd ? rule.across : rule.along;
  return limit.kind === 'fixed' ? limit.most : steady(millimetres(limit.each * span));
}
