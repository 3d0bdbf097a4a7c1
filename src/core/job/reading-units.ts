import { convert, type Measured, type UnitName } from '../fastening/quantity';
import { type Dimension, dimensionOf } from '../fastening/unit';
import { isOnScale } from '../language/domain';
import type { SlotDomain, UnitScale } from '../language/grammar';

/** What a reading may be, in the unit of its step: a plausible range, and how finely it is read. */
export type Readable = {
  readonly unit: UnitName;
  readonly least: number;
  readonly most: number;
  readonly decimals: number;
};

/**
 * The units somebody may read a gauge in, whatever the document's own is (common practice). Units that no gauge of a
 * workshop has are left out, for each more is one more to mistake: no microns, no millilitres of
 * what is poured in litres, no kilograms on a square centimetre.
 */
const SENSIBLE: Readonly<Record<Dimension, readonly UnitName[]>> = {
  torque: ['N·m', 'lbf·ft', 'lbf·in'],
  force: ['N', 'kN', 'lbf'],
  length: ['mm', 'thou', 'in'],
  angle: ['deg'],
  pressure: ['bar', 'psi', 'kPa'],
  temperature: ['degC', 'degF'],
  volume: ['L', 'US qt', 'imp qt'],
  mass: ['kg', 'g', 'lb'],
  time: [],
  ratio: [],
  speed: [],
  voltage: [],
};

/** The unit of the other habit, shown beside the one that was said. */
const BESIDE: Partial<Record<UnitName, UnitName>> = {
  N·m: 'lbf·ft',
  lbf·ft: 'N·m',
  lbf·in: 'N·m',
  thou: 'mm',
  in: 'mm',
  bar: 'psi',
  kPa: 'psi',
  psi: 'bar',
  degC: 'degF',
  degF: 'degC',
  kg: 'lb',
  lb: 'kg',
};

/** Thousandths are said of what a feeler gauge or a dial reads, and not of the length of a bolt. */
const MOST_THOU = 250;
/** No grid finer than a tenth of a thousandth of an inch: nobody says more digits. */
const MOST_DECIMALS = 4;
/**
 * Two readings of one number nearer than a fifth are no mistake to warn of (a litre and a quart), and nobody takes one
 * for the other that is fifty times as much (a bar and a kilopascal). Thou and millimetres are 39 times apart.
 */
const APART = { least: 1.2, most: 50 } as const;

/** What can be heard as this reading: its own unit or none, and any other sensible unit where it is named. */
export const readingDomain = (spec: Readable): Extract<SlotDomain, { kind: 'reading' }> => ({
  kind: 'reading',
  least: spec.least,
  most: spec.most,
  decimals: spec.decimals,
  units: [spec.unit],
  unitNeeded: false,
  also: otherScales(spec),
});

/** The plausible range in each other unit that makes sense here, read at least as finely as in the step's own. */
function otherScales(spec: Readable): readonly (UnitScale & { readonly unit: UnitName })[] {
  return SENSIBLE[dimensionOf(spec.unit)].flatMap((unit) => {
    if (unit === spec.unit) return [];
    const least = Math.max(0, inUnit({ value: spec.least, unit: spec.unit }, unit));
    const most = inUnit({ value: spec.most, unit: spec.unit }, unit);
    if (unit === 'thou' && most > MOST_THOU) return [];
    const step = inUnit({ value: spec.least + 10 ** -spec.decimals, unit: spec.unit }, unit) - least;
    const decimals = Math.min(MOST_DECIMALS, Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)));
    return [{ least, most, decimals, units: [unit], unit }];
  });
}

/** A value in the unit asked for, exactly; the two are of one dimension here, or it is a bug. */
function inUnit(from: Measured, to: UnitName): number {
  const found = convert(from, to);
  if (!found.ok) throw new Error(`${from.unit} is no ${to}`);
  // The dust of binary fractions must not move a bound: 2 thou is 0.0508 mm and not a hair more.
  return Number(found.value.toPrecision(12));
}

/** What was read, in the unit of its step; undefined for a unit of something else. */
export function inStepUnit(spec: Readable, read: Measured): number | undefined {
  return dimensionOf(read.unit) === dimensionOf(spec.unit) ? inUnit(read, spec.unit) : undefined;
}

/** Whether a reading can be true: in the plausible range of its step, whatever unit it was read in. */
export function isPlausible(spec: Readable, read: Measured): boolean {
  const value = inStepUnit(spec, read);
  return value !== undefined && value >= spec.least && value <= spec.most;
}

/**
 * Whether a number said without its unit could as well be one of another unit here, and something else by far:
 * "point zero two" at a gap in millimetres may be twenty thousandths of an inch.
 */
export function isAmbiguous(spec: Readable, value: number): boolean {
  return otherScales(spec).some((scale) => {
    const other = inUnit({ value, unit: scale.unit }, spec.unit);
    const ratio = Math.max(other, value) / Math.min(other, value);
    return isOnScale(scale, value) && ratio > APART.least && ratio < APART.most;
  });
}

/** The same reading in the unit beside the one that was said: the step's own, or the other habit's; none for a third. */
export function besideOf(spec: Readable, read: Measured): Measured | null {
  const unit = read.unit === spec.unit ? otherHabit(spec) : spec.unit;
  return unit === undefined ? null : { value: inUnit(read, unit), unit };
}

function otherHabit({ unit, most }: Readable): UnitName | undefined {
  if (unit !== 'mm') return BESIDE[unit];
  return inUnit({ value: most, unit }, 'thou') > MOST_THOU ? 'in' : 'thou';
}

/** A torque read at the end of a turn, over a floor or not: anything up to three times the floor, in whole units. */
export const floorReading = ({ unit, value }: Measured): Readable => ({
  unit,
  least: 1,
  most: Math.ceil(3 * value),
  decimals: 0,
});

/** As any reading; and "pounds" alone, which is no torque: it has to be understood to be asked back. */
export function floorDomain(floor: Measured): Extract<SlotDomain, { kind: 'reading' }> {
  const domain = readingDomain(floorReading(floor));
  const pounds: UnitScale = { least: 1, most: domain.most, decimals: 0, units: ['lbf'] };
  return { ...domain, also: [...(domain.also ?? []), pounds] };
}
