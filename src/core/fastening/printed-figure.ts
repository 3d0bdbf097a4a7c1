import { fail, ok, type Result } from '../result';
import { NUMBER, type NumberIssue, parseNumber } from './printed-number';
import type { Printed, WrongDimension } from './quantity';
import { steady } from './steady';
import { type Dimension, dimensionOf, type UnitName } from './unit';
import { type UnitNames, unitsSpelt } from './unit-spelling';

/** Why a printed figure cannot be taken as it stands. `given` is the piece of the text that is at fault. */
export type FigureIssue =
  | NumberIssue
  | { readonly code: 'unit-missing'; readonly given: string }
  | { readonly code: 'unknown-unit'; readonly given: string }
  /** "Pounds" alone, "gallons" alone: which one has to be asked. */
  | { readonly code: 'ambiguous-unit'; readonly given: string; readonly could: readonly UnitName[] }
  | { readonly code: 'two-units-in-a-range'; readonly given: string }
  | { readonly code: 'range-reversed'; readonly given: string }
  | { readonly code: 'not-a-figure'; readonly given: string }
  | (WrongDimension & { readonly text: string });

/**
 * Reads a figure as manuals print it: "30 N·m (22 lbf·ft)", "22 ft-lb", "85-95°", "90 ± 5 deg", "0.05 mm [0.002 in]",
 * "170 N·m / 1733 kgf·cm / 125 lbf·ft". The first figure leads; the others become its `also`.
 * Give the dimension where the place in the document settles it: anything else is then refused. `named` are the names its
 * language has for units: their symbols are known without.
 * Issues are collected over all parts. Whether the parts agree is for `pairDisagreements`.
 */
export function parsePrinted(
  text: string,
  wanted?: Dimension,
  named?: UnitNames,
): Result<Printed, readonly FigureIssue[]> {
  const issues: FigureIssue[] = [];
  const figures: Printed[] = [];
  for (const part of partsOf(text)) {
    const figure = parsePart(part, wanted ?? leadDimension(figures), named);
    if (figure.ok) figures.push(figure.value);
    else issues.push(figure.error);
  }
  const [lead, ...also] = figures;
  if (issues.length > 0) return fail(issues);
  if (!lead) return fail([{ code: 'not-a-figure', given: text }]);
  return ok(also.length > 0 ? { ...lead, also } : lead);
}

const leadDimension = (figures: readonly Printed[]): Dimension | undefined =>
  figures[0] && dimensionOf(figures[0].unit);

/** Brackets, semicolons, slashes with space or after a letter, and commas before a space part one figure from the next. */
const partsOf = (text: string): readonly string[] =>
  text
    .split(/[()[\];=]|\s\/\s|(?<=[a-z°%])\/(?=\d)|,\s+/i)
    .map((part) => part.trim())
    .filter((part) => part !== '');

const UNIT = '([^\\d]*?(?:\\/?[cm]*m[23²³]|\\/in[2²])?)';
const FIGURE = new RegExp(
  `^(${NUMBER})\\s*(?:${UNIT}\\s*(-|\\u2010|\\u2012|\\u2013|\\u2014|\\bto\\b|\\u2026|±|\\+\\/-|\\+-)\\s*(${NUMBER}))?\\s*${UNIT}$`,
  'i',
);

function parsePart(
  part: string,
  wanted: Dimension | undefined,
  named: UnitNames | undefined,
): Result<Printed, FigureIssue> {
  const match = FIGURE.exec(part);
  if (!match) return fail({ code: 'not-a-figure', given: part });
  const [, firstText = '', innerUnit = '', join, secondText, unitText = ''] = match;
  const first = parseNumber(firstText);
  if (!first.ok) return first;
  const unit = unitOf(unitText, part, wanted, named);
  if (!unit.ok) return unit;
  if (innerUnit.trim() !== '') {
    const inner = unitOf(innerUnit, part, wanted, named);
    if (!inner.ok) return inner;
    if (inner.value !== unit.value) return fail({ code: 'two-units-in-a-range', given: part });
  }
  if (secondText === undefined) return ok({ printed: part, value: first.value.value, unit: unit.value });
  const second = parseNumber(secondText);
  if (!second.ok) return second;
  return rangeOf(part, unit.value, first.value.value, second.value.value, join ?? '');
}

function rangeOf(
  part: string,
  unit: UnitName,
  first: number,
  second: number,
  join: string,
): Result<Printed, FigureIssue> {
  const isTolerance = /[±+]/.test(join);
  const least = isTolerance ? steady(first - second) : first;
  const most = isTolerance ? steady(first + second) : second;
  if (least > most) return fail({ code: 'range-reversed', given: part });
  const value = isTolerance ? first : steady((first + second) / 2);
  return ok({ printed: part, value, unit, window: { least, most } });
}

function unitOf(
  text: string,
  part: string,
  wanted: Dimension | undefined,
  named: UnitNames | undefined,
): Result<UnitName, FigureIssue> {
  const given = text.trim();
  if (given === '') return fail({ code: 'unit-missing', given: part });
  const [unit, ...others] = unitsSpelt(given, wanted, named);
  if (!unit) return fail({ code: 'unknown-unit', given });
  if (wanted && dimensionOf(unit) !== wanted) return fail({ code: 'wrong-dimension', given: unit, wanted, text: part });
  return others.length > 0 ? fail({ code: 'ambiguous-unit', given, could: [unit, ...others] }) : ok(unit);
}
