import { describe, expect, test } from 'vitest';
import { convert } from '../../../src/core/fastening/quantity';
import { UNIT_NAMES } from '../../../src/core/fastening/unit';
import { boltsPhrase, joined } from '../../../src/core/phrasing/list-words';
import { digitsPhrase, figurePhrase } from '../../../src/core/phrasing/quantity-words';
import type { Figure } from '../../../src/core/phrasing/reply';
import { shownBoth } from '../../../src/core/phrasing/shown-both';
import { clockPhrase, durationPhrase } from '../../../src/core/phrasing/time-words';
import { englishBook } from './english';

const { words } = englishBook();

describe('quantities', () => {
  test.each<[Figure, string, string]>([
    [{ printed: '40 N·m', value: 40, unit: 'N·m' }, 'forty newton metres', '40 N·m'],
    [{ printed: '22 ft-lb', value: 22, unit: 'lbf·ft' }, 'twenty two foot pounds', '22 ft-lb'],
    [{ printed: '95 lb', value: 95, unit: 'lbf·in' }, 'ninety five inch pounds', '95 lb'],
    [{ printed: '1 N·m', value: 1, unit: 'N·m' }, 'one newton metre', '1 N·m'],
    [{ printed: '0.05 mm', value: 0.05, unit: 'mm' }, 'zero point zero five millimetres', '0.05 mm'],
    [{ printed: '0,05 mm', value: 0.05, unit: 'mm' }, 'zero point zero five millimetres', '0,05 mm'],
    [{ printed: '1/2 in', value: 0.5, unit: 'in' }, 'one half inch', '1/2 in'],
    [{ printed: '1 1/2 in', value: 1.5, unit: 'in' }, 'one and one half inches', '1 1/2 in'],
    [{ printed: '3 thou', value: 3, unit: 'thou' }, 'three thou', '3 thou'],
    [{ printed: '85-95°', value: 90, unit: 'deg' }, 'eighty five to ninety five degrees', '85-95°'],
    [{ printed: '20 – 25 N·m', value: 22.5, unit: 'N·m' }, 'twenty to twenty five newton metres', '20 – 25 N·m'],
    [{ printed: '20 to 25 N·m', value: 22.5, unit: 'N·m' }, 'twenty to twenty five newton metres', '20 to 25 N·m'],
    [{ printed: '90 ± 5 deg', value: 90, unit: 'deg' }, 'ninety plus or minus five degrees', '90 ± 5 deg'],
    [{ printed: '-37 °C', value: -37, unit: 'degC' }, 'minus thirty seven degrees Celsius', '-37 °C'],
    [
      { printed: '-40 to -30 °C', value: -35, unit: 'degC' },
      'minus forty to minus thirty degrees Celsius',
      '-40 to -30 °C',
    ],
    [{ printed: '12 kgf/cm²', value: 12, unit: 'kgf/cm2' }, 'twelve kilograms per square centimetre', '12 kgf/cm²'],
    [{ printed: 'hand tight', value: 5, unit: 'N·m' }, 'five newton metres', 'hand tight'],
    [{ value: 0.47, unit: 'mm' }, 'zero point four seven millimetres', '0.47 mm'],
    [{ value: 165, unit: 'psi' }, 'one hundred and sixty five P S I', '165 psi'],
    [{ value: 90, unit: 'deg' }, 'ninety degrees', '90°'],
    [{ value: 25.4, unit: 'um' }, 'twenty five point four microns', '25.4 µm'],
  ])('%j is %j', (figure, spoken, shown) => {
    expect(figurePhrase(figure, words)).toEqual({ spoken, shown });
  });

  test('a converted value is said to three digits: 40 N·m is 29.5 foot pounds (US Army TM 10-3930-669-20)', () => {
    const value = convert({ value: 40, unit: 'N·m' }, 'lbf·ft');
    if (!value.ok) throw new Error(value.error.code);
    expect(figurePhrase({ value: value.value, unit: 'lbf·ft' }, words)).toEqual({
      spoken: 'twenty nine point five foot pounds',
      shown: '29.5 lbf·ft',
    });
  });

  test('both units are shown, the printed one first', () => {
    const printed = { printed: '40 N·m', value: 40, unit: 'N·m' } as const;
    const also = [{ printed: '29.5 lb-ft', value: 29.5, unit: 'lbf·ft' }] as const;
    expect(shownBoth({ ...printed, also }, 'lbf·ft')).toBe('40 N·m (29.5 lb-ft)');
    expect(shownBoth(printed, 'lbf·ft')).toBe('40 N·m (29.5 lbf·ft)');
    expect(shownBoth(printed, 'N·m')).toBe('40 N·m');
    expect(shownBoth(printed, 'mm')).toBe('40 N·m');
  });

  test.each(UNIT_NAMES)('%s has words that a voice can read', (unit) => {
    expect(figurePhrase({ value: 2, unit }, words).spoken).toMatch(/^two [A-Za-z ]+$/);
  });
});

describe('read back digit by digit (FAA AIM 4-2-8)', () => {
  test.each([
    [40, 'N·m', 'four zero newton metres', '40 N·m'],
    [0.05, 'mm', 'zero point zero five millimetres', '0.05 mm'],
    [165, null, 'one six five', '165'],
    [90, 'deg', 'nine zero degrees', '90°'],
  ] as const)('%d %s is %j', (value, unit, spoken, shown) => {
    expect(digitsPhrase(value, unit, words)).toEqual({ spoken, shown });
  });
});

describe('durations, never shorter than they are', () => {
  test.each([
    [9_000_000, 'two hours thirty minutes', '2 h 30 min'],
    [3_600_000, 'one hour', '1 h'],
    [86_400_000, 'twenty four hours', '24 h'],
    [600_000, 'ten minutes', '10 min'],
    [540_001, 'ten minutes', '10 min'],
    [300_000, 'five minutes', '5 min'],
    [90_000, 'one minute thirty seconds', '1 min 30 s'],
    [81_000, 'one minute thirty seconds', '1 min 30 s'],
    [60_000, 'one minute', '1 min'],
    [59_001, 'one minute', '1 min'],
    [1000, 'one second', '1 s'],
    [1, 'one second', '1 s'],
    [0, 'no time', 'no time'],
    [-5, 'no time', 'no time'],
  ])('%d ms is %j', (ms, spoken, shown) => {
    expect(durationPhrase(ms, words)).toEqual({ spoken, shown });
  });
});

test.each([
  [3, 'three o’clock', '3 o’clock'],
  [12, 'twelve o’clock', '12 o’clock'],
  [4.5, 'half past four', 'half past 4'],
  [12.5, 'half past twelve', 'half past 12'],
])('a mark at %d points to %j', (hours, spoken, shown) => {
  expect(clockPhrase(hours, words)).toEqual({ spoken, shown });
});

describe('bolts', () => {
  test.each<[readonly number[], string, string]>([
    [[7], 'bolt seven', 'bolt 7'],
    [[1, 2], 'bolts one and two', 'bolts 1 and 2'],
    [[1, 2, 5], 'bolts one, two and five', 'bolts 1, 2 and 5'],
    [[1, 2, 3], 'bolts one through three', 'bolts 1 to 3'],
    [[1, 2, 3, 4, 5, 6], 'bolts one through six', 'bolts 1 to 6'],
    [[1, 2, 3, 9, 10], 'bolts one through three, nine and ten', 'bolts 1 to 3, 9 and 10'],
    [[5, 6, 4, 3], 'bolts five, six, four and three', 'bolts 5, 6, 4 and 3'],
    [[], '', ''],
  ])('%j are %j', (numbers, spoken, shown) => {
    expect(boltsPhrase(numbers, words)).toEqual({ spoken, shown });
  });
});

test.each([
  [[], 'nothing'],
  [['a'], 'a'],
  [['a', 'b'], 'a and b'],
  [['a', 'b', 'c'], 'a, b and c'],
])('the list %j is %j', (items, said) => {
  const phrases = items.map((item) => ({ spoken: item, shown: item }));
  expect(joined(phrases, words)).toEqual({ spoken: said, shown: said });
});
