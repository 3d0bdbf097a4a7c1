/** The listed word that the fewest slips of the finger turn into this one, or null when none is near. */
export function nearest(word: string, listed: readonly string[]): string | null {
  const scored = listed.map((other) => ({ other, slips: slipsBetween(word, other) }));
  const best = scored.toSorted((a, b) => a.slips - b.slips)[0];
  return best !== undefined && best.slips <= Math.max(1, Math.floor(word.length / 3)) ? best.other : null;
}

/** Letters put in, left out or changed (Levenshtein 1966), one row of the table at a time. */
function slipsBetween(a: string, b: string): number {
  let above = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (const [row, letter] of [...a].entries()) {
    const line = [row + 1];
    for (const [column, other] of [...b].entries()) {
      const changed = (above[column] ?? 0) + (letter === other ? 0 : 1);
      line.push(Math.min(changed, (above[column + 1] ?? 0) + 1, (line[column] ?? 0) + 1));
    }
    above = line;
  }
  return above.at(-1) ?? 0;
}
