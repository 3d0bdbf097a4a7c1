/** More decimals than this come from a calculation; a manual or a person gives at most as many. */
const GIVEN_DECIMALS = 4;
const SIGNIFICANT = 3;

/**
 * A value in figures. One that is short as it stands was read or printed and keeps every digit; a longer one was
 * computed and keeps three significant digits, or its whole part. The dust of binary fractions is taken off first.
 */
export function figureText(value: number): string {
  const clean = Number(value.toPrecision(12)) + 0;
  const plain = withoutExponent(clean);
  if (!Number.isFinite(clean) || (plain.split('.')[1]?.length ?? 0) <= GIVEN_DECIMALS) return plain;
  const decimals = SIGNIFICANT - 1 - Math.floor(Math.log10(Math.abs(clean)));
  return withoutExponent(Number(clean.toFixed(Math.min(SMALLEST, Math.max(0, decimals)))));
}

/** Decimals beyond which nothing is shown. */
const SMALLEST = 12;

function withoutExponent(value: number): string {
  const plain = String(value);
  return plain.includes('e-') ? value.toFixed(SMALLEST).replace(/\.?0+$/, '') : plain;
}
