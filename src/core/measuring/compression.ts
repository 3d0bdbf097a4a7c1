import { type NotPositive, notPositive } from '../fastening/positive';
import { type Kilopascals, kilopascals, type Percent, percent } from '../fastening/quantity';
import { steady } from '../fastening/steady';
import type { Working } from '../fastening/working';
import { assertNever, fail, ok, type Result } from '../result';

/** A named rule for compression readings. The same readings can pass one and fail another, so a verdict names its rule. */
export type CompressionRule = {
  readonly name: string;
  readonly source: string;
} /** The lowest at least this percentage of the highest, and every one at least `least` where one is given. */ & (
  | { readonly kind: 'share-of-highest'; readonly percent: number; readonly least?: Kilopascals }
  /** The lowest at most this percentage below the highest. */
  | { readonly kind: 'spread'; readonly percent: number }
  /** None this percentage below the average of all, or more. */
  | { readonly kind: 'below-average'; readonly percent: number }
);

/** Rules in common use. A procedure may name one of these or carry its maker's own. */
export const COMPRESSION_RULES: readonly CompressionRule[] = [
  { name: 'lowest-75-of-highest', source: '{common-practice}', kind: 'share-of-highest', percent: 75 },
  {
    name: 'lowest-70-of-highest-and-100-psi',
    source: '{common-practice}',
    kind: 'share-of-highest',
    percent: 70,
    least: kilopascals(689.4757293168361),
  },
  { name: 'within-10-percent', source: '{common-practice}', kind: 'spread', percent: 10 },
  { name: 'none-20-below-average', source: 'US Army TM 1-1500-204-23-1', kind: 'below-average', percent: 20 },
];

/** Pressures by cylinder number. */
export type CompressionReadings = ReadonlyMap<number, Kilopascals>;

export type CompressionVerdict = {
  readonly rule: CompressionRule;
  readonly passes: boolean;
  /** The cylinders below what this rule asks, lowest first. */
  readonly low: readonly number[];
  /** What each cylinder must reach under this rule, given these readings. */
  readonly needed: Kilopascals;
  readonly lowest: number;
  readonly highest: number;
  /** The lowest as a share of the highest. */
  readonly share: Percent;
  /** The fall from the highest to the lowest, as a share of the highest. */
  readonly spread: Percent;
  readonly working: Working;
};

export type CompressionError = NotPositive | { readonly code: 'too-few-cylinders'; readonly given: number };

/** Judges compression readings, in kPa, by one rule. Errors: `too-few-cylinders` below two, `not-positive`. */
export function compressionVerdict(
  readings: CompressionReadings,
  rule: CompressionRule,
): Result<CompressionVerdict, CompressionError> {
  const rising = [...readings].sort(([, a], [, b]) => a - b);
  const lowest = rising[0];
  const highest = rising.at(-1);
  if (!lowest || !highest || rising.length < 2) return fail({ code: 'too-few-cylinders', given: rising.length });
  const bad = notPositive(Object.fromEntries(rising));
  if (bad) return fail(bad);
  const needed = steady(neededBy(rule, highest[1], rising));
  // "20 % below" is already a failure, so an average rule must be exceeded and the others only reached.
  const isLow = (p: Kilopascals) => (rule.kind === 'below-average' ? steady(p) <= needed : steady(p) < needed);
  const low = rising.filter(([, p]) => isLow(p)).map(([cylinder]) => cylinder);
  const share = percent((100 * lowest[1]) / highest[1]);
  return ok({
    rule,
    passes: low.length === 0,
    low,
    needed,
    lowest: lowest[0],
    highest: highest[0],
    share,
    spread: percent((100 * (highest[1] - lowest[1])) / highest[1]),
    working: workingOf(rule, rising, needed),
  });
}

/** By the rule's own measure: the share, the fall, or the average less what may be missing from it. */
function workingOf(rule: CompressionRule, rising: Rising, needed: Kilopascals): Working {
  const ends = [
    { name: 'lowest', value: rising[0]?.[1] ?? Number.NaN, unit: 'kPa' },
    { name: 'highest', value: rising.at(-1)?.[1] ?? Number.NaN, unit: 'kPa' },
  ] as const;
  const [{ value: lowest }, { value: highest }] = ends;
  switch (rule.kind) {
    case 'share-of-highest':
      return {
        formula: 'compression-share',
        inputs: ends,
        result: { name: 'share', value: (100 * lowest) / highest, unit: '%' },
      };
    case 'spread':
      return {
        formula: 'compression-spread',
        inputs: ends,
        result: { name: 'spread', value: (100 * (highest - lowest)) / highest, unit: '%' },
      };
    case 'below-average':
      return {
        formula: 'compression-average',
        inputs: [
          { name: 'average', value: averageOf(rising), unit: 'kPa' },
          { name: 'below', value: rule.percent, unit: '%' },
        ],
        result: { name: 'needed', value: needed, unit: 'kPa' },
      };
    default:
      return assertNever(rule);
  }
}

type Rising = readonly (readonly [number, Kilopascals])[];

const averageOf = (readings: Rising): number => readings.reduce((sum, [, p]) => sum + p, 0) / readings.length;

function neededBy(rule: CompressionRule, highest: Kilopascals, readings: Rising): Kilopascals {
  switch (rule.kind) {
    case 'share-of-highest':
      return kilopascals(Math.max((highest * rule.percent) / 100, rule.least ?? 0));
    case 'spread':
      return kilopascals(highest * (1 - rule.percent / 100));
    case 'below-average':
      return kilopascals(averageOf(readings) * (1 - rule.percent / 100));
    default:
      return assertNever(rule);
  }
}
