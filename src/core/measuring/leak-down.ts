import { type NotPositive, notPositive } from '../fastening/positive';
import { type Kilopascals, type Percent, percent } from '../fastening/quantity';
import type { Working } from '../fastening/working';
import { fail, ok, type Result } from '../result';

/** Where the air is heard or seen to come out. */
const LEAK_PLACES = ['inlet', 'exhaust', 'oil-filler', 'coolant', 'next-cylinder'] as const;
export type LeakPlace = (typeof LEAK_PLACES)[number];

/** What a place points at (common practice). Coolant and the next cylinder both leave the head itself in question. */
export const LEAK_CAUSES: Readonly<Record<LeakPlace, readonly LeakCause[]>> = {
  inlet: ['inlet-valve'],
  exhaust: ['exhaust-valve'],
  'oil-filler': ['piston-rings'],
  coolant: ['head-gasket', 'cracked-head'],
  'next-cylinder': ['head-gasket'],
};
export type LeakCause = 'inlet-valve' | 'exhaust-valve' | 'piston-rings' | 'head-gasket' | 'cracked-head';

/** Grades of leakage as somebody draws them: sources differ, so the bands carry a name. */
export type LeakBands = {
  readonly name: string;
  readonly source: string;
  /** In rising order; a leak below `below` percent has this grade. Above the last band it is `rest`. */
  readonly bands: readonly { readonly below: number; readonly grade: LeakGrade }[];
  readonly rest: LeakGrade;
};
export type LeakGrade = 'sound' | 'watch' | 'investigate';

/** Under 10 % is healthy: common practice. */
export const USUAL_LEAK_BANDS: LeakBands = {
  name: 'below-10-percent',
  source: '{common-practice}',
  bands: [{ below: 10, grade: 'sound' }],
  rest: 'investigate',
};

export type LeakError =
  | NotPositive
  | { readonly code: 'held-above-fed'; readonly fed: Kilopascals; readonly held: Kilopascals };

/**
 * The leakage in percent: what is lost of the pressure fed, 100 (fed - held)/fed, both in kPa on the gauge.
 * Errors: `not-positive` for the feed, `held-above-fed` (the two gauges are swapped or need zeroing; a reading below
 * zero too). Source: common practice.
 */
export function leakage(
  fed: Kilopascals,
  held: Kilopascals,
): Result<{ readonly leak: Percent; readonly working: Working }, LeakError> {
  const bad = notPositive({ fed });
  if (bad) return fail(bad);
  if (!(held >= 0 && held <= fed)) return fail({ code: 'held-above-fed', fed, held });
  const leak = percent(Number(((100 * (fed - held)) / fed).toFixed(9)));
  return ok({
    leak,
    working: {
      formula: 'leak-percent',
      inputs: [
        { name: 'fed', value: fed, unit: 'kPa' },
        { name: 'held', value: held, unit: 'kPa' },
      ],
      result: { name: 'leak', value: leak, unit: '%' },
    },
  });
}

/** The grade of a leak by somebody's bands. */
export const leakGrade = (leak: Percent, bands: LeakBands): LeakGrade =>
  bands.bands.find((band) => leak < band.below)?.grade ?? bands.rest;
