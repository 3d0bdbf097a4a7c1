import { base, convert, type Dimension, type Millimetres, type UnitName } from '../fastening/quantity';
import { roundedFigure } from '../fastening/shown-figure';
import { dimensionOf, isUnitName, symbolOf } from '../fastening/unit';
import { formulaOf, sourceOf, type Working } from '../fastening/working';
import { list, quantity, type Reply, reply, type Said, terms, text } from '../phrasing/reply';
import { isTerm } from '../phrasing/terms';
import type { NamedReading, RuleName } from './rule';

/** The way a result was reached: whose rule, the formula, what went into it and where the formula comes from. */
export const workedBy = (rule: RuleName, working: Working, unit?: UnitName, whose = text(rule.whose)): Reply =>
  reply('worked-by', { rule: text(rule.say), whose, ...howOf(working, unit) });

/** A formula, what went into it and where it comes from. */
export const howOf = (working: Working, unit?: UnitName) => ({
  formula: terms(formulaOf(working)),
  given: terms(givenOf(working, unit)),
  source: terms(sourceOf(working)),
});

/** What went into a sum, by the letters and words of its formula. */
const givenOf = (working: Working, unit?: UnitName): string =>
  working.inputs.map((one) => `${isTerm(one.name) ? `{${one.name}}` : one.name} ${shown(one, unit)}`).join(', ');

/** A figure of the working in the person's unit where it is of the same kind. */
function shown({ value, unit: own }: Working['inputs'][number], wanted?: UnitName): string {
  const inWanted =
    wanted && isUnitName(own) && dimensionOf(own) === dimensionOf(wanted)
      ? convert({ value, unit: own }, wanted)
      : null;
  const [number, unit] = inWanted?.ok ? [inWanted.value, wanted] : [value, own];
  const symbol = unit === undefined || unit === 'ratio' ? '' : ` ${isUnitName(unit) ? symbolOf(unit) : unit}`;
  return `${Number(number.toPrecision(5))}${symbol}`;
}

/** Whether the rule is kept, and by whom not. */
export const verdictOf = (rule: RuleName, bad: readonly string[]): Reply =>
  bad.length === 0
    ? reply('sum-kept', { rule: text(rule.say) })
    : reply('sum-broken', { rule: text(rule.say), names: list(bad) });

/** A computed figure with so many decimals. */
export const figure = (value: number, unit: UnitName, decimals: number): Said =>
  quantity(roundedFigure({ value, unit }, decimals));

/** A length in mm as a person reads it off his own gauge: 0.01 mm, 0.0001 in, 0.1 of anything else; mm where it is marked in no length. */
export function lengthIn(length: Millimetres, unit: UnitName): Said {
  const inUnit = dimensionOf(unit) === 'length' ? convert({ value: length, unit: 'mm' }, unit) : null;
  return inUnit?.ok && unit !== 'mm' ? figure(inUnit.value, unit, unit === 'in' ? 4 : 1) : figure(length, 'mm', 2);
}

/** A reading in the base unit of a dimension the checker has made sure of. */
export function baseValue<D extends Dimension>(reading: NamedReading, dimension: D) {
  // The checker lets a rule stand only beside readings of its dimension.
  const unit = reading.unit as Parameters<typeof base<D>>[1];
  return dimensionOf(reading.unit) === dimension ? base<D>(reading.value, unit) : base<D>(Number.NaN, unit);
}

/** Readings two by two. */
export const pairsOf = (all: readonly NamedReading[]): readonly (readonly [NamedReading, NamedReading])[] =>
  all.flatMap((one, i) => {
    const next = all[i + 1];
    return i % 2 === 0 && next ? [[one, next] as const] : [];
  });
