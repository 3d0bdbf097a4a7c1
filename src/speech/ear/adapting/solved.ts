/** Solves a square system of linear equations by Gaussian elimination with the largest pivot first. */
export function solved(left: readonly Float64Array[], right: Float64Array): readonly number[] {
  const rows = left.map((row, n) => Float64Array.from([...row, right[n] ?? 0]));
  for (let column = 0; column < rows.length; column += 1) {
    const from = rows.reduce(
      (best, row, n) => (n > column && Math.abs(row[column] ?? 0) > Math.abs(rows[best]?.[column] ?? 0) ? n : best),
      column,
    );
    const pivot = rows[from];
    const other = rows[column];
    if (!pivot || !other || pivot[column] === 0) throw new Error('a system of equations without one answer');
    rows[column] = pivot;
    rows[from] = other;
    for (const row of rows.slice(column + 1)) {
      const factor = (row[column] ?? 0) / (pivot[column] ?? 1);
      for (let n = column; n < row.length; n += 1) row[n] = (row[n] ?? 0) - factor * (pivot[n] ?? 0);
    }
  }
  const answer = new Float64Array(rows.length);
  for (let n = rows.length - 1; n >= 0; n -= 1) {
    const row = rows[n] ?? new Float64Array(0);
    const rest = answer.reduce((sum, value, at) => sum - value * (row[at] ?? 0), row[rows.length] ?? 0);
    answer[n] = rest / (row[n] ?? 1);
  }
  return [...answer];
}
