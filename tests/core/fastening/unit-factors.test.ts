import fc from 'fast-check';
import { evaluate, type Unit } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { convert, convertDifference, type UnitName } from '../../../src/core/fastening/quantity';
import { dimensionOf, isUnitName, UNIT_NAMES } from '../../../src/core/fastening/unit';

const converted = (value: number, unit: UnitName, to: UnitName): number => {
  const result = convert({ value, unit }, to);
  return result.ok ? result.value : Number.NaN;
};

describe('factors against published ones', () => {
  const SP811 = 'NIST SP 811, app. B.8, from exact definitions';
  test.each<[number, UnitName, UnitName, number, string]>([
    [1, 'lbf', 'N', 4.4482216152605, SP811],
    [1, 'lbf·ft', 'N·m', 1.3558179483314, SP811],
    [1, 'lbf·in', 'N·m', 0.1129848290276167, SP811],
    [1, 'ozf·in', 'N·m', 0.007061551814226, SP811],
    [1, 'kgf·m', 'N·m', 9.80665, SP811],
    [1, 'kgf·cm', 'N·m', 0.0980665, SP811],
    [1, 'psi', 'kPa', 6.894757293168361, SP811],
    [1, 'ksi', 'MPa', 6.894757293168361, SP811],
    [1, 'bar', 'kPa', 100, SP811],
    [1, 'atm', 'kPa', 101.325, SP811],
    [1, 'kgf/cm2', 'kPa', 98.0665, SP811],
    [1, 'in', 'mm', 25.4, SP811],
    [1, 'thou', 'um', 25.4, SP811],
    [1, 'microinch', 'um', 0.0254, SP811],
    [1, 'US gal', 'L', 3.785411784, SP811],
    [1, 'US qt', 'L', 0.946352946, SP811],
    [1, 'imp gal', 'L', 4.54609, SP811],
    [1, 'imp qt', 'L', 1.1365225, SP811],
    [212, 'degF', 'degC', 100, SP811],
    [-40, 'degC', 'degF', -40, SP811],
    [95, 'lbf·ft', 'lbf·in', 1140, 'US Army TB 43-0218: the wrong pound is twelve times the torque'],
    [95, 'lbf·in', 'lbf·ft', 95 / 12, 'US Army TB 43-0218: divide by twelve'],
  ])('%d %s is so many %s', (value, from, to, expected) => {
    expect(converted(value, from, to)).toBeCloseTo(expected, 12);
  });

  test('a conventional inch of mercury agrees with the rounded factor of NIST SP 811', () => {
    expect(converted(1, 'inHg', 'kPa')).toBeCloseTo(3.386389, 5);
  });
});

describe('factors against an independent library (mathjs)', () => {
  // Its gallons are rounded to four figures, so volumes are built from 231 cubic inches instead.
  test.each<[UnitName, UnitName, string]>([
    ['lbf·ft', 'N·m', '1 lbf * 1 ft to N m'],
    ['lbf·in', 'N·m', '1 lbf * 1 inch to N m'],
    ['ozf·in', 'N·m', '1/16 lbf * 1 inch to N m'],
    ['kgf·m', 'N·m', '1 kg * 9.80665 m/s^2 * 1 m to N m'],
    ['kgf·cm', 'N·m', '1 kg * 9.80665 m/s^2 * 1 cm to N m'],
    ['kN', 'lbf', '1 kN to lbf'],
    ['kgf', 'N', '1 kg * 9.80665 m/s^2 to N'],
    ['in', 'mm', '1 inch to mm'],
    ['ft', 'm', '1 ft to m'],
    ['thou', 'um', '0.001 inch to um'],
    ['cm', 'in', '1 cm to inch'],
    ['turn', 'deg', '1 cycle to deg'],
    ['MPa', 'bar', '1 MPa to bar'],
    ['atm', 'kPa', '1 atm to kPa'],
    ['psi', 'kPa', '1 lbf / (1 inch)^2 to kPa'],
    ['US gal', 'L', '231 inch^3 to L'],
    ['US qt', 'mL', '231/4 inch^3 to ml'],
    ['lb', 'g', '1 lbm to g'],
    ['h', 'min', '1 hour to minute'],
    ['min', 's', '1 minute to s'],
  ])('one %s in %s', (from, to, expression) => {
    const reference: Unit = evaluate(expression);
    const expected = reference.toNumber(expression.split(' to ')[1] ?? '');
    expect(converted(1, from, to) / expected).toBeCloseTo(1, 12);
  });

  test.each([-40, 0, 37.5, 90, 212])('%d °F in °C', (fahrenheit) => {
    const reference: Unit = evaluate(`${fahrenheit} degF to degC`);
    expect(converted(fahrenheit, 'degF', 'degC')).toBeCloseTo(reference.toNumber('degC'), 9);
  });
});

describe('published figures given in several units', () => {
  test.each<[number, UnitName, number, UnitName, string]>([
    [306, 'kgf·cm', 30, 'N·m', 'service-manual triple 30 / 306 / 22'],
    [22, 'lbf·ft', 30, 'N·m', 'service-manual triple 30 / 306 / 22'],
    [1733, 'kgf·cm', 170, 'N·m', 'service-manual triple 170 / 1733 / 125'],
    [125, 'lbf·ft', 170, 'N·m', 'service-manual triple 170 / 1733 / 125'],
    [29.5, 'lbf·ft', 40, 'N·m', 'US Army TM 10-3930-669-20'],
  ])('%d %s is %d %s within the rounding of both', (value, from, expected, to) => {
    expect(Math.abs(converted(value, from, to) / expected - 1)).toBeLessThan(0.01);
  });
});

describe('a difference in temperature is not a temperature', () => {
  test.each<[number, UnitName, UnitName, number, number]>([
    [10, 'degC', 'degF', 50, 18],
    [18, 'degF', 'degC', -7.777777777777778, 10],
  ])('%d %s', (value, unit, to, asPoint, asDifference) => {
    expect(converted(value, unit, to)).toBeCloseTo(asPoint, 10);
    const difference = convertDifference({ value, unit }, to);
    expect(difference.ok && difference.value).toBeCloseTo(asDifference, 10);
  });
});

test('one dimension never turns into another', () => {
  for (const from of UNIT_NAMES)
    for (const to of UNIT_NAMES) {
      const same = dimensionOf(from) === dimensionOf(to);
      expect(convert({ value: 1, unit: from }, to).ok, `${from} to ${to}`).toBe(same);
      expect(convertDifference({ value: 1, unit: from }, to).ok, `${from} to ${to}`).toBe(same);
    }
  expect(convert({ value: 22, unit: 'psi' }, 'N·m')).toEqual({
    ok: false,
    error: { code: 'wrong-dimension', given: 'psi', wanted: 'torque' },
  });
});

test('names inherited from objects are not units', () => {
  expect(isUnitName('constructor')).toBe(false);
  expect(isUnitName('Nm')).toBe(false);
});

test('there and back is the same value, and order is kept', () => {
  const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });
  const pair = fc
    .tuple(fc.constantFrom(...UNIT_NAMES), fc.constantFrom(...UNIT_NAMES))
    .filter(([a, b]) => dimensionOf(a) === dimensionOf(b));
  fc.assert(
    fc.property(value, value, pair, (a, b, [from, to]) => {
      const back = converted(converted(a, from, to), to, from);
      expect(Math.abs(back - a)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(a)));
      if (a < b) expect(converted(a, from, to)).toBeLessThanOrEqual(converted(b, from, to));
    }),
  );
});
