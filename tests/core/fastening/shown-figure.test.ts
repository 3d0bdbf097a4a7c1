import { describe, expect, test } from 'vitest';
import { readWordingFile } from '../../../src/cli/tongue-files';
import { parsePrinted } from '../../../src/core/fastening/printed-figure';
import type { UnitName } from '../../../src/core/fastening/quantity';
import { roundedFigure, shownIn } from '../../../src/core/fastening/shown-figure';

const ENGLISH = readWordingFile('en').units;

const shown = (text: string, unit: UnitName) => {
  const figure = parsePrinted(text, undefined, ENGLISH);
  const result = figure.ok ? shownIn(figure.value, unit) : figure;
  return result.ok ? result.value.printed : result.error;
};

describe('what the document prints is shown as it stands', () => {
  test.each<[string, UnitName, string]>([
    ['30 N·m (22 lbf·ft)', 'N·m', '30 N·m'],
    ['30 N·m (22 lbf·ft)', 'lbf·ft', '22 lbf·ft'],
    ['22 ft. lbs.', 'lbf·ft', '22 ft. lbs.'],
  ])('%s in %s', (text, unit, expected) => {
    expect(shown(text, unit)).toBe(expected);
  });
});

describe('other units are converted and rounded to about the last printed digit', () => {
  test.each<[string, UnitName, string, string]>([
    ['30 N·m', 'lbf·ft', '22.1 lbf·ft', 'NIST SP 811: 22.127'],
    ['95 lbf·in', 'N·m', '10.7 N·m', 'NIST SP 811: 10.734'],
    ['95 lbf·in', 'lbf·ft', '7.92 lbf·ft', 'one twelfth'],
    ['22 lbf·ft', 'N·m', '30 N·m', 'NIST SP 811: 29.828'],
    ['0.05 mm', 'in', '0.0020 in', 'NIST SP 811: 0.001969'],
    ['85-95 °C', 'degF', '185 - 203 °F', 'exact'],
    ['1/3 turn', 'deg', '120.0°', 'exact'],
    ['0 °C', 'degF', '32 °F', 'exact'],
  ])('%s in %s', (text, unit, expected) => {
    expect(shown(text, unit)).toBe(expected);
  });
});

test('another dimension is refused with both named', () => {
  expect(shown('30 N·m', 'psi')).toEqual({ code: 'wrong-dimension', given: 'N·m', wanted: 'pressure' });
});

test('a value rounded to nothing is not minus nothing', () => {
  expect(roundedFigure({ value: -0.001, unit: 'mm' }, 2)).toEqual({ printed: '0.00 mm', value: 0, unit: 'mm' });
});
