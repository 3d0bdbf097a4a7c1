/**
 * A set of numbers on a decimal grid, as rising ranges of whole grid steps, both ends included: with one decimal,
 * 2.5 to 4 is [25, 40]. Whole steps keep sums and comparisons exact.
 */
export type NumberSet = {
  readonly decimals: number;
  readonly ranges: readonly (readonly [number, number])[];
};

export const isEmpty = (set: NumberSet): boolean => set.ranges.length === 0;

/** The numbers given, where they lie on the grid. */
export function setOf(values: readonly number[], decimals: number): NumberSet {
  const steps = values.flatMap((value) => onGrid(value, decimals) ?? []).sort((a, b) => a - b);
  const ranges: [number, number][] = [];
  for (const step of steps) {
    const last = ranges[ranges.length - 1];
    if (last && step <= last[1] + 1) last[1] = step;
    else ranges.push([step, step]);
  }
  return { decimals, ranges };
}

/** All grid numbers from `least` to `most`. */
export function setBetween(least: number, most: number, decimals: number): NumberSet {
  const scale = 10 ** decimals;
  const low = Math.ceil(least * scale - SLACK);
  const high = Math.floor(most * scale + SLACK);
  return { decimals, ranges: low <= high ? [[low, high]] : [] };
}

export function has(set: NumberSet, value: number): boolean {
  const step = onGrid(value, set.decimals);
  return step !== undefined && set.ranges.some(([low, high]) => low <= step && step <= high);
}

export function largest(set: NumberSet): number {
  const last = set.ranges[set.ranges.length - 1];
  return last ? last[1] / 10 ** set.decimals : 0;
}

/** From the smallest number to the largest. */
export function spread(set: NumberSet): number {
  const [first] = set.ranges;
  return first ? largest(set) - first[0] / 10 ** set.decimals : 0;
}

/** The numbers before the point of those in the set. */
export function wholes(set: NumberSet): NumberSet {
  const scale = 10 ** set.decimals;
  const values = set.ranges.flatMap(([low, high]) => {
    const from = Math.floor(low / scale);
    return Array.from({ length: Math.floor(high / scale) - from + 1 }, (_, step) => from + step);
  });
  return setOf(values, set.decimals);
}

/** What must still be added to `value` to reach the set, as far as `least` to `most` can do it. */
export function remaining(set: NumberSet, value: number, least: number, most: number): NumberSet {
  const taken = onGrid(value, set.decimals);
  if (taken === undefined) return { ...set, ranges: [] };
  const scale = 10 ** set.decimals;
  const bottom = Math.ceil(least * scale - SLACK);
  const top = Math.floor(most * scale + SLACK);
  const ranges = set.ranges.flatMap(([low, high]): readonly (readonly [number, number])[] => {
    const from = Math.max(low - taken, bottom);
    const to = Math.min(high - taken, top);
    return from <= to ? [[from, to]] : [];
  });
  return { ...set, ranges };
}

export const keyOf = (set: NumberSet): string => set.ranges.map(([low, high]) => `${low}-${high}`).join(',');

// Room for binary rounding of decimal fractions such as 0.29 * 100.
const SLACK = 1e-6;

function onGrid(value: number, decimals: number): number | undefined {
  const steps = value * 10 ** decimals;
  const whole = Math.round(steps);
  return Math.abs(steps - whole) <= SLACK ? whole : undefined;
}
