/**
 * Pairs of cylinders that stand side by side in one bank, among those given. Two low neighbours that oil does not help
 * point at the gasket between them (common practice). Each bank lists its cylinders from one end to the other:
 * neighbours are by place, never by number, for in a V engine 1 and 2 may sit in different banks.
 */
export function neighboursAmong(
  cylinders: readonly number[],
  banks: readonly (readonly number[])[],
): readonly (readonly [number, number])[] {
  const among = new Set(cylinders);
  return banks.flatMap((bank) =>
    bank.flatMap((cylinder, i) => {
      const next = bank[i + 1];
      return next !== undefined && among.has(cylinder) && among.has(next) ? [[cylinder, next] as const] : [];
    }),
  );
}
