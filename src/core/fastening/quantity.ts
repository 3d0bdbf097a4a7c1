import { fail, ok, type Result } from '../result';
import { type Dimension, dimensionOf, UNITS, type UnitIn, type UnitName } from './unit';

export type { Dimension, UnitIn, UnitName } from './unit';

/** Both bounds included; in the unit of the figure it belongs to. */
export type Window = { readonly least: number; readonly most: number };

/**
 * A figure as a document prints it: "30 N·m (22 lbf·ft)" is `printed: '30 N·m'`, value 30, unit N·m, also 22 lbf·ft.
 * For a range ("85-95°") the value is its middle and the window holds its ends.
 */
export type Printed = {
  readonly printed: string;
  readonly value: number;
  readonly unit: UnitName;
  readonly window?: Window;
  /** The same figure in other units, as the document itself prints it beside the first. */
  readonly also?: readonly Printed[];
};

/** A number and its unit, without the text it came from. */
export type Measured = { readonly value: number; readonly unit: UnitName };

declare const unit: unique symbol;
type In<U extends string> = number & { readonly [unit]: U };

export type NewtonMetres = In<'N·m'>;
export type Newtons = In<'N'>;
export type Millimetres = In<'mm'>;
export type SquareMillimetres = In<'mm2'>;
export type Degrees = In<'deg'>;
export type Kilopascals = In<'kPa'>;
/** The same as newtons on a square millimetre. */
export type Megapascals = In<'MPa'>;
export type Celsius = In<'degC'>;
export type Litres = In<'L'>;
export type Kilograms = In<'kg'>;
export type Seconds = In<'s'>;
export type Percent = In<'%'>;
export type TurnsPerMinute = In<'rpm'>;
export type Volts = In<'V'>;

/** The branded type that formulas use for each dimension. */
export type Base = {
  readonly torque: NewtonMetres;
  readonly force: Newtons;
  readonly length: Millimetres;
  readonly angle: Degrees;
  readonly pressure: Kilopascals;
  readonly temperature: Celsius;
  readonly volume: Litres;
  readonly mass: Kilograms;
  readonly time: Seconds;
  readonly ratio: Percent;
  readonly speed: TurnsPerMinute;
  readonly voltage: Volts;
};

// The one place where a bare number is given its unit: a brand has no run-time form, so only a cast can make it.
const brand = <T extends number>(value: number): T => value as T;

export const newtonMetres = (value: number): NewtonMetres => brand(value);
export const newtons = (value: number): Newtons => brand(value);
export const millimetres = (value: number): Millimetres => brand(value);
export const squareMillimetres = (value: number): SquareMillimetres => brand(value);
export const degrees = (value: number): Degrees => brand(value);
export const kilopascals = (value: number): Kilopascals => brand(value);
export const megapascals = (value: number): Megapascals => brand(value);
export const celsius = (value: number): Celsius => brand(value);
export const litres = (value: number): Litres => brand(value);
export const percent = (value: number): Percent => brand(value);

/** A value in any unit of a dimension as the branded base: `base<'torque'>(22, 'lbf·ft')` is 29.83 N·m. */
export const base = <D extends Dimension>(value: number, from: UnitIn<D>): Base[D] => brand(toBase(value, from));

/** A branded value in the unit asked for. */
export const inUnit = <D extends Dimension>(value: Base[D], to: UnitIn<D>): number => fromBase(value, to);

export type WrongDimension = {
  readonly code: 'wrong-dimension';
  readonly given: UnitName;
  readonly wanted: Dimension;
};

/** A measured or printed figure as the branded base of the dimension wanted, or the unit that cannot be one. */
export function baseOf<D extends Dimension>(from: Measured, wanted: D): Result<Base[D], WrongDimension> {
  return dimensionOf(from.unit) === wanted
    ? ok(brand<Base[D]>(toBase(from.value, from.unit)))
    : fail({ code: 'wrong-dimension', given: from.unit, wanted });
}

/**
 * The value in another unit of the same dimension. Factors are exact by definition (NIST SP 811, appendix B).
 * A temperature is a point on its scale: 10 degC is 50 degF. For a rise or fall use `convertDifference`.
 */
export function convert(from: Measured, to: UnitName): Result<number, WrongDimension> {
  const wanted = dimensionOf(to);
  if (dimensionOf(from.unit) !== wanted) return fail({ code: 'wrong-dimension', given: from.unit, wanted });
  return ok(from.unit === to ? from.value : fromBase(toBase(from.value, from.unit), to));
}

/** As `convert`, for a difference between two figures: a rise of 10 degC is a rise of 18 degF. */
export function convertDifference(from: Measured, to: UnitName): Result<number, WrongDimension> {
  const wanted = dimensionOf(to);
  if (dimensionOf(from.unit) !== wanted) return fail({ code: 'wrong-dimension', given: from.unit, wanted });
  return ok(from.unit === to ? from.value : (from.value * UNITS[from.unit].factor) / UNITS[to].factor);
}

const toBase = (value: number, from: UnitName): number => (value - UNITS[from].zero) * UNITS[from].factor;
const fromBase = (value: number, to: UnitName): number => value / UNITS[to].factor + UNITS[to].zero;
