import { fail, ok, type Result } from '../result';

/** One row of a printed table: y at x. */
export type TableRow = readonly [x: number, y: number];

export type TableError =
  | { readonly code: 'outside-table'; readonly given: number; readonly least: number; readonly most: number }
  | { readonly code: 'table-too-short'; readonly rows: number };

/**
 * The value of a table at x, on the straight line between the two rows around it; rows in rising x, no unit assumed.
 * Never beyond the ends: a table says nothing there. Errors: `outside-table`, `table-too-short`.
 */
export function interpolate(rows: readonly TableRow[], x: number): Result<number, TableError> {
  const first = rows[0];
  const last = rows.at(-1);
  if (!first || !last || rows.length < 2) return fail({ code: 'table-too-short', rows: rows.length });
  const upper = rows.findIndex((row, i) => i > 0 && x <= row[0]);
  const [below, above] = [rows[upper - 1], rows[upper]];
  if (x < first[0] || !below || !above)
    return fail({ code: 'outside-table', given: x, least: first[0], most: last[0] });
  return ok(between(below, above, x));
}

/** The value at x on the straight line through two points. */
export const between = ([x1, y1]: TableRow, [x2, y2]: TableRow, x: number): number =>
  y1 + ((y2 - y1) * (x - x1)) / (x2 - x1);
