import { describe, expect, test } from 'vitest';
import { limitVerdict } from '../../../src/core/job/limit';
import { besideOf, inStepUnit, isAmbiguous, isPlausible, readingDomain } from '../../../src/core/job/reading-units';
import { holds } from '../../../src/core/language/domain';
import { checkedText } from './checked-text';

const GAP = { unit: 'mm', least: 0, most: 1, decimals: 2 } as const;
const PRESSURE = { unit: 'bar', least: 5, most: 20, decimals: 1 } as const;
const LENGTH = { unit: 'mm', least: 55, most: 70, decimals: 1 } as const;
const HEAT = { unit: 'degC', least: 0, most: 120, decimals: 0 } as const;
const POURED = { unit: 'L', least: 0, most: 20, decimals: 1 } as const;

// Factors: NIST SP 811, appendix B: 1 in = 25.4 mm, 1 psi = 6.894757 kPa, 1 bar = 100 kPa; degF = 1.8 degC + 32.
test.each([
  ['two thou', GAP, 2, 'thou', 0.0508],
  ['a tenth under forty thou', GAP, 39.3, 'thou', 0.99822],
  ['two thousandths of an inch', GAP, 0.002, 'in', 0.0508],
  ['psi on a gauge', PRESSURE, 165, 'psi', 11.376349],
  ['kPa on a gauge', PRESSURE, 900, 'kPa', 9],
  ['a bolt in inches', LENGTH, 2.5, 'in', 63.5],
  ['boiling', HEAT, 212, 'degF', 100],
] as const)('%s is heard where the step has another unit', (_, spec, value, unit, own) => {
  expect(holds(readingDomain(spec), { kind: 'reading', value, unit })).toBe(true);
  expect(inStepUnit(spec, { value, unit })).toBeCloseTo(own, 5);
  expect(isPlausible(spec, { value, unit })).toBe(true);
});

test.each([
  ['forty thou is over one millimetre', GAP, 40, 'thou'],
  ['70 psi is under five bar', PRESSURE, 70, 'psi'],
  ['291 psi is over twenty bar', PRESSURE, 291, 'psi'],
  ['a number between two marks', PRESSURE, 150.5, 'psi'],
  ['thou of a bolt', LENGTH, 2500, 'thou'],
  ['degrees of a gap', GAP, 1, 'degC'],
  ['newton metres of a gap', GAP, 1, 'N·m'],
] as const)('%s is not', (_, spec, value, unit) => {
  expect(holds(readingDomain(spec), { kind: 'reading', value, unit })).toBe(false);
});

test('a number without a unit is in the unit of the step, and no other', () => {
  expect(holds(readingDomain(PRESSURE), { kind: 'reading', value: 165, unit: null })).toBe(false);
  expect(holds(readingDomain(PRESSURE), { kind: 'reading', value: 9.4, unit: null })).toBe(true);
});

test.each([
  ['twenty thousandths or two hundredths', GAP, 0.02, true],
  ['half a tenth of a millimetre is no inches and no tenth of a thou', GAP, 0.05, false],
  ['nine bar is no nine psi', PRESSURE, 9.4, false],
  ['ninety degrees is hot or mild', HEAT, 90, true],
  ['six litres and six quarts are near enough', POURED, 6, false],
] as const)('%s', (_, spec, value, ambiguous) => {
  expect(isAmbiguous(spec, value)).toBe(ambiguous);
});

test.each([
  [GAP, 2, 'thou', { value: 0.0508, unit: 'mm' }],
  [GAP, 0.0508, 'mm', { value: 2, unit: 'thou' }],
  [LENGTH, 63.5, 'mm', { value: 2.5, unit: 'in' }],
  [POURED, 6, 'L', null],
] as const)('what is shown beside it', (spec, value, unit, beside) => {
  expect(besideOf(spec, { value, unit })).toEqual(beside);
});

describe('a limit is held exactly, whatever the reading was in', () => {
  const step = checkedText('thou-and-psi');
  test.each([
    ['flatness', 2, 'thou', false, '0.0508 mm over 0.05'],
    ['flatness', 1.9, 'thou', true, '0.04826 mm'],
    ['flatness', 0.05, 'mm', true, 'the bound itself'],
    ['compression', 145, 'psi', false, '9.9974 bar'],
    ['compression', 146, 'psi', true, '10.066 bar'],
    ['compression', 1000, 'kPa', true, 'the bound itself'],
    ['lash', 0.0254, 'mm', true, 'one thou, the bound itself'],
    ['lash', 0.0508, 'mm', true, 'two thou, the bound itself'],
    ['lash', 0.0509, 'mm', false, 'a hair over two thou'],
    ['lash', 0.002, 'in', true, 'two thou'],
  ] as const)('%s %d %s: %s (%s)', (id, value, unit, within, _) => {
    expect(limitVerdict(step.procedure, step.of(id), { value, unit })).toBe(within);
  });
});
