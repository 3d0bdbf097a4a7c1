/** More decimals than this come from a calculation; a manual or a person gives at most as many. */
const GIVEN_DECIMALS = 4;
const SIGNIFICANT = 3;

/**
 * A value in figures. One that is short as it stands was read or printed and keeps every digit; a longer one was
 * computed and keeps three significant digits, or its whole part. The dust of binary fractions is taken off first.
 */
export function figureText(value: number): string {
  const clean = Number(value.toPrecision(12)) + 0;
  if (!Number.isFinite(clean) || Number.isInteger(clean)) return String(clean);
  const plain = clean.toFixed(12).replace(/0+$/, '');
  if ((plain.split('.')[1]?.length ?? 0) <= GIVEN_DECIMALS) return plain;
  const decimals = Math.max(0, SIGNIFICANT - 1 - Math.floor(Math.log10(Math.abs(clean))));
  return String(Number(clean.toFixed(Math.min(decimals, 12))));
}
