/**
 * Which rows of a long list to draw. Rows differ in height and their heights are known only once drawn; until then
 * each counts as `guess`. All in CSS pixels, known by the row's key.
 */
export type Heights = {
  readonly rows: readonly { readonly key: string }[];
  readonly guess: number;
  readonly known: ReadonlyMap<string, number>;
};

/** Where each row begins; one more than there are rows, so that the last is the whole height. */
export function offsetsOf({ rows, guess, known }: Heights): Float64Array {
  const offsets = new Float64Array(rows.length + 1);
  for (const [i, { key }] of rows.entries()) offsets[i + 1] = (offsets[i] ?? 0) + (known.get(key) ?? guess);
  return offsets;
}

/** The row that lies at this height; the last one beyond the end. */
export function rowAt(offsets: Float64Array, y: number): number {
  let low = 0;
  let high = Math.max(0, offsets.length - 2);
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((offsets[middle] ?? 0) <= y) low = middle;
    else high = middle - 1;
  }
  return low;
}

export type Span = {
  /** First row drawn, and the one after the last. */
  readonly from: number;
  readonly to: number;
  /** Empty height that stands for the rows before and after. */
  readonly before: number;
  readonly after: number;
};

/** The rows in sight with as many again above and below as `spare` pixels hold, so that scrolling finds them drawn. */
export function spanOf(offsets: Float64Array, scrolled: number, viewHeight: number, spare: number): Span {
  const count = offsets.length - 1;
  if (count <= 0) return { from: 0, to: 0, before: 0, after: 0 };
  const from = rowAt(offsets, Math.max(0, scrolled - spare));
  const to = Math.min(count, rowAt(offsets, scrolled + viewHeight + spare) + 1);
  const total = offsets[count] ?? 0;
  return { from, to, before: offsets[from] ?? 0, after: total - (offsets[to] ?? total) };
}
