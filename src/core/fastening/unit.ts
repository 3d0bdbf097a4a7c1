/** What a unit measures. Two units convert into each other exactly when they share it. */
export type Dimension =
  | 'torque'
  | 'force'
  | 'length'
  | 'angle'
  | 'pressure'
  | 'temperature'
  | 'volume'
  | 'mass'
  | 'time'
  | 'ratio'
  | 'speed'
  | 'voltage';

/** `base = (value - zero) * factor`. The base unit of a dimension is the one with factor 1 and zero 0. */
type Unit = {
  readonly dimension: Dimension;
  readonly factor: number;
  readonly zero: number;
  readonly symbol: string;
};

// Exact by definition: 1 lb = 0.45359237 kg, standard gravity 9.80665 m/s2, 1 in = 25.4 mm,
// 1 US gal = 231 in3, 1 imperial gal = 4.54609 L (NIST SP 811, appendix B).
const POUND_KG = 0.45359237;
const GRAVITY = 9.80665;
const INCH_MM = 25.4;
const POUND_FORCE_N = 4.4482216152605;
const US_GALLON_L = 3.785411784;
const IMPERIAL_GALLON_L = 4.54609;

const unit = <D extends Dimension>(dimension: D, symbol: string, factor: number, zero = 0) => ({
  dimension,
  symbol,
  factor,
  zero,
});

/** Every unit the program knows. The names are plain to type; the symbols are what is shown. */
export const UNITS = {
  N·m: unit('torque', 'N·m', 1),
  lbf·ft: unit('torque', 'lbf·ft', (POUND_FORCE_N * 12 * INCH_MM) / 1000),
  lbf·in: unit('torque', 'lbf·in', (POUND_FORCE_N * INCH_MM) / 1000),
  ozf·in: unit('torque', 'ozf·in', (POUND_FORCE_N * INCH_MM) / 16_000),
  kgf·m: unit('torque', 'kgf·m', GRAVITY),
  kgf·cm: unit('torque', 'kgf·cm', GRAVITY / 100),
  N: unit('force', 'N', 1),
  kN: unit('force', 'kN', 1000),
  lbf: unit('force', 'lbf', POUND_FORCE_N),
  kgf: unit('force', 'kgf', GRAVITY),
  mm: unit('length', 'mm', 1),
  cm: unit('length', 'cm', 10),
  m: unit('length', 'm', 1000),
  um: unit('length', 'µm', 0.001),
  in: unit('length', 'in', INCH_MM),
  ft: unit('length', 'ft', 12 * INCH_MM),
  thou: unit('length', 'thou', INCH_MM / 1000),
  microinch: unit('length', 'µin', INCH_MM / 1e6),
  deg: unit('angle', '°', 1),
  turn: unit('angle', 'turn', 360),
  kPa: unit('pressure', 'kPa', 1),
  MPa: unit('pressure', 'MPa', 1000),
  bar: unit('pressure', 'bar', 100),
  psi: unit('pressure', 'psi', POUND_FORCE_N / (INCH_MM * INCH_MM) / 0.001),
  ksi: unit('pressure', 'ksi', POUND_FORCE_N / (INCH_MM * INCH_MM) / 1e-6),
  'kgf/cm2': unit('pressure', 'kgf/cm²', GRAVITY * 10),
  atm: unit('pressure', 'atm', 101.325),
  // Conventional mercury, 13 595.1 kg/m3 under standard gravity.
  inHg: unit('pressure', 'inHg', (13.5951 * GRAVITY * INCH_MM) / 1000),
  degC: unit('temperature', '°C', 1),
  degF: unit('temperature', '°F', 1 / 1.8, 32),
  L: unit('volume', 'L', 1),
  mL: unit('volume', 'mL', 0.001),
  'US gal': unit('volume', 'US gal', US_GALLON_L),
  'US qt': unit('volume', 'US qt', US_GALLON_L / 4),
  'imp gal': unit('volume', 'imp gal', IMPERIAL_GALLON_L),
  'imp qt': unit('volume', 'imp qt', IMPERIAL_GALLON_L / 4),
  kg: unit('mass', 'kg', 1),
  g: unit('mass', 'g', 0.001),
  lb: unit('mass', 'lb', POUND_KG),
  s: unit('time', 's', 1),
  min: unit('time', 'min', 60),
  h: unit('time', 'h', 3600),
  '%': unit('ratio', '%', 1),
  rpm: unit('speed', 'rpm', 1),
  V: unit('voltage', 'V', 1),
} as const satisfies Record<string, Unit>;

export type UnitName = keyof typeof UNITS;

/** The names of the units of one dimension: `UnitIn<'torque'>` is `'N·m' | 'lbf·ft' | ...`. */
export type UnitIn<D extends Dimension> = {
  [U in UnitName]: (typeof UNITS)[U]['dimension'] extends D ? U : never;
}[UnitName];

export const dimensionOf = (name: UnitName): Dimension => UNITS[name].dimension;

/** How the unit is shown: `µm` for `um`, `°C` for `degC`. */
export const symbolOf = (name: UnitName): string => UNITS[name].symbol;

/** Whether a word is the name of a unit as documents and logs write it; `Nm` is a spelling, not a name. */
export const isUnitName = (word: string): word is UnitName => Object.hasOwn(UNITS, word);

/** All names, for schemas and tables. */
export const UNIT_NAMES: readonly UnitName[] = Object.keys(UNITS).filter(isUnitName);
