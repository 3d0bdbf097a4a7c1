import { ok, type Result } from '../result';
import { lastDigitOf } from './printed-number';
import { convert, type Measured, type Printed, type WrongDimension } from './quantity';
import { symbolOf, UNITS, type UnitName } from './unit';

/**
 * The figure in the unit asked for. What the document prints is never re-computed: its own figure or its own pair in
 * that unit is given back as it stands. Otherwise it is converted and rounded to about the worth of its last digit.
 */
export function shownIn(figure: Printed, unit: UnitName): Result<Printed, WrongDimension> {
  const printed = [figure, ...(figure.also ?? [])].find((one) => one.unit === unit);
  if (printed) return ok(printed);
  const value = convert(figure, unit);
  if (!value.ok) return value;
  const decimals = decimalsFor(figure, unit);
  if (!figure.window) return ok(roundedFigure({ value: value.value, unit }, decimals));
  const least = convert({ value: figure.window.least, unit: figure.unit }, unit);
  const most = convert({ value: figure.window.most, unit: figure.unit }, unit);
  if (!least.ok) return least;
  if (!most.ok) return most;
  const ends = { least: rounded(least.value, decimals), most: rounded(most.value, decimals) };
  const text = `${ends.least.toFixed(decimals)} - ${withSymbol(ends.most.toFixed(decimals), unit)}`;
  return ok({ printed: text, value: rounded(value.value, decimals), unit, window: ends });
}

/** A computed value as a figure with so many decimals: what a result looks like on the screen and in the voice. */
export const roundedFigure = (from: Measured, decimals: number): Printed => ({
  printed: withSymbol(rounded(from.value, decimals).toFixed(decimals), from.unit),
  value: rounded(from.value, decimals),
  unit: from.unit,
});

/** A degree of angle stands at its number; every other symbol keeps a space (SI Brochure, 5.4.3). */
const withSymbol = (number: string, unit: UnitName): string =>
  unit === 'deg' ? `${number}${symbolOf(unit)}` : `${number} ${symbolOf(unit)}`;

/** Adding zero turns a rounded -0 into 0, which nobody should hear as "minus zero". */
const rounded = (value: number, decimals: number): number => Number(value.toFixed(decimals)) + 0;

function decimalsFor(figure: Printed, unit: UnitName): number {
  const step = lastDigitOf(figure.printed) || FRACTION_STEP * Math.abs(figure.value);
  const converted = (step * UNITS[figure.unit].factor) / UNITS[unit].factor;
  return Math.min(6, Math.max(0, Math.ceil(-Math.log10(converted) - 1e-9)));
}

/** A printed fraction is exact; it is shown to about one part in a thousand. */
const FRACTION_STEP = 0.001;
