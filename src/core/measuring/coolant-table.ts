import { type Celsius, celsius, type Percent, percent } from '../fastening/quantity';
import type { Working } from '../fastening/working';
import { fail, ok, type Result } from '../result';
import { between, interpolate, type TableError, type TableRow } from './interpolation';

/** Freezing points of one fluid in water, from one source. Whether the percentage is by volume or by mass is always said. */
export type CoolantTable = {
  readonly name: string;
  readonly fluid: 'ethylene-glycol' | 'propylene-glycol' | 'ethanol';
  readonly by: 'volume' | 'mass';
  readonly source: string;
  /** Percent of the fluid in rising order, and the freezing point in degC. Protection may rise and fall again. */
  readonly rows: readonly TableRow[];
};

/** Tables to compute with where a procedure brings none. They disagree by a few degrees, as their sources do. */
export const COOLANT_TABLES: readonly CoolantTable[] = [
  {
    name: 'ethylene-glycol-handbook',
    fluid: 'ethylene-glycol',
    by: 'volume',
    source: '{engine-handbook}',
    rows: [
      [28.4, -10],
      [32.8, -15],
      [38.5, -20],
      [45.3, -25],
      [47.8, -30],
      [50, -35],
      [54, -40],
      [57, -45],
      [59, -50],
      [80, -45],
      [85, -30],
      [100, -13],
    ],
  },
  {
    name: 'ethylene-glycol-reprinted',
    fluid: 'ethylene-glycol',
    by: 'volume',
    source: '{reprinted-table}',
    rows: [
      [0, 0],
      [10, -3.4],
      [20, -7.9],
      [30, -13.7],
      [40, -23.5],
      [50, -36.8],
      [60, -52.8],
    ],
  },
  {
    name: 'propylene-glycol-lange',
    fluid: 'propylene-glycol',
    by: 'volume',
    source: "Lange's Handbook of Chemistry, 15th ed., table 5.13",
    rows: [
      [5, -1.1],
      [10, -2.2],
      [15, -3.9],
      [20, -6.7],
      [25, -8.9],
      [30, -12.8],
      [35, -16.1],
      [40, -20.6],
      [45, -26.7],
      [50, -33.3],
    ],
  },
];

/** The freezing point in degC of a mixture with this percentage. Errors: `outside-table`, `table-too-short`. */
export function freezingPoint(table: CoolantTable, share: Percent): Result<Celsius, TableError> {
  const found = interpolate(table.rows, share);
  return found.ok ? ok(celsius(found.value)) : found;
}

/** How the freezing point of a share was reached: the two rows it lies between. None outside the table. */
export function freezingWorking(table: CoolantTable, share: Percent): Working | undefined {
  const upper = table.rows.findIndex(([s], i) => i > 0 && s >= share);
  const [below, above] = [table.rows[upper - 1], table.rows[upper]];
  const found = freezingPoint(table, share);
  if (!below || !above || !found.ok) return undefined;
  return {
    formula: 'freezing-point',
    inputs: [
      { name: 'share', value: share, unit: '%' },
      { name: 's1', value: below[0], unit: '%' },
      { name: 't1', value: below[1], unit: 'degC' },
      { name: 's2', value: above[0], unit: '%' },
      { name: 't2', value: above[1], unit: 'degC' },
    ],
    result: { name: 't', value: found.value, unit: 'degC' },
  };
}

export type ProtectionError =
  | { readonly code: 'colder-than-table'; readonly wanted: Celsius; readonly coldest: Celsius }
  /** Warmer than the first row: less than the table's smallest share is enough, but how much it does not say. */
  | { readonly code: 'warmer-than-table'; readonly wanted: Celsius; readonly warmest: Celsius };

/**
 * The smallest percentage that does not freeze at this temperature in degC. Taken from the falling side of the table:
 * past its coldest row, near 60 % for ethylene glycol, more of the fluid protects less.
 * Errors: `colder-than-table`, `warmer-than-table`.
 */
export function shareFor(table: CoolantTable, wanted: Celsius): Result<Percent, ProtectionError> {
  const temperatures = table.rows.map(([, t]) => t);
  const coldest = celsius(Math.min(...temperatures));
  const warmest = celsius(temperatures[0] ?? Number.NaN);
  if (!(wanted >= coldest)) return fail({ code: 'colder-than-table', wanted, coldest });
  const upper = table.rows.findIndex(([, t]) => t <= wanted);
  const [below, above] = [table.rows[upper - 1], table.rows[upper]];
  if (above && above[1] === wanted) return ok(percent(above[0]));
  if (!below || !above) return fail({ code: 'warmer-than-table', wanted, warmest });
  return ok(percent(between([below[1], below[0]], [above[1], above[0]], wanted)));
}
