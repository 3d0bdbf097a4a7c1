import { describe, expect, test } from 'vitest';
import { base, inUnit, millimetres } from '../../../src/core/fastening/quantity';
import {
  type Face,
  FLATNESS_LINES,
  type FlatnessLine,
  type FlatnessRule,
  flatnessVerdict,
  limitOn,
} from '../../../src/core/measuring/flatness';

const inches = (value: number) => base<'length'>(value, 'in');
const fixed = (most: number) => ({ kind: 'fixed', most: millimetres(most) }) as const;
const rule = (along: FlatnessRule['along'], across = along): FlatnessRule => ({
  name: 'as given',
  whose: 'common practice; makers differ',
  along,
  across,
});
const PER_INCH = rule({ kind: 'per-span', each: 0.00075 });
/** All six lines flat but one. */
const gaps = (line: FlatnessLine, gap: number) =>
  new Map(FLATNESS_LINES.map((one) => [one, millimetres(one === line ? gap : 0)]));
const FACE: Face = { length: inches(12), width: inches(6) };

describe('0.00075 in for each inch of a 12 in span (common practice)', () => {
  test('the limit is 0.009 in', () => {
    expect(inUnit<'length'>(limitOn('long-edge-1', PER_INCH, FACE), 'in')).toBeCloseTo(0.009, 9);
  });

  test.each([
    [0.004, true],
    [0.009, true],
    [0.0091, false],
    [0.011, false],
  ])('a gap of %d in: within is %s', (gap, within) => {
    const verdict = flatnessVerdict(gaps('long-edge-2', inches(gap)), PER_INCH, FACE);
    expect(verdict).toMatchObject({ ok: true, value: { worst: 'long-edge-2', within } });
  });

  test('an end is shorter and so is its limit', () => {
    expect(inUnit<'length'>(limitOn('end-1', PER_INCH, FACE), 'in')).toBeCloseTo(0.0045, 9);
  });
});

describe('whose limit it is decides', () => {
  test.each([
    ['0.03 mm overall', rule(fixed(0.03)), false],
    ['0.05 mm as made', rule(fixed(0.05)), true],
    ['0.20 mm in service', rule(fixed(0.2)), true],
  ])('0.05 mm by %s: within is %s', (_, given, within) => {
    const verdict = flatnessVerdict(gaps('diagonal-1', 0.05), given, FACE);
    expect(verdict.ok && verdict.value.within).toBe(within);
    expect(verdict.ok && verdict.value.rule).toBe(given);
  });

  test.each([
    [3, 0.003, 0.076],
    [4, 0.004, 0.102],
  ])('%d cylinders in the bank: %d in is %d mm (workshop rule: a thou for each cylinder)', (cylinders, inch, mm) => {
    expect(inches(0.001 * cylinders)).toBeCloseTo(inches(inch), 9);
    expect(inches(inch)).toBeCloseTo(mm, 3);
  });

  test('the worst line is the one nearest its own limit, not the widest gap', () => {
    const stricterAcross = rule(fixed(0.1), fixed(0.05));
    const found = new Map(gaps('long-edge-1', 0.07)).set('end-2', millimetres(0.06));
    const verdict = flatnessVerdict(found, stricterAcross, FACE);
    expect(verdict).toMatchObject({ ok: true, value: { worst: 'end-2', gap: 0.06, limit: 0.05, within: false } });
  });
});

describe('readings that cannot be judged', () => {
  test('five lines are not six', () => {
    const five = gaps('end-1', 0.01);
    five.delete('diagonal-2');
    expect(flatnessVerdict(five, PER_INCH, FACE)).toEqual({
      ok: false,
      error: { code: 'lines-missing', missing: ['diagonal-2'] },
    });
  });

  test.each([-0.01, Number.NaN])('a gap of %d', (given) => {
    expect(flatnessVerdict(gaps('end-1', given), PER_INCH, FACE)).toEqual({
      ok: false,
      error: { code: 'negative-gap', line: 'end-1', given },
    });
  });
});
