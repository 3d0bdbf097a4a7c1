import { describe, expect, test } from 'vitest';
import { readWordingFile } from '../../../src/cli/tongue-files';
import { parsePrinted } from '../../../src/core/fastening/printed-figure';
import type { Dimension, UnitName } from '../../../src/core/fastening/quantity';
import { dimensionOf, UNIT_NAMES } from '../../../src/core/fastening/unit';

const ENGLISH = readWordingFile('en').units;

const read = (text: string, wanted?: Dimension) => {
  const result = parsePrinted(text, wanted, ENGLISH);
  return result.ok ? result.value : result.error;
};

describe('single figures, as manuals print them', () => {
  test.each<[string, number, UnitName]>([
    ['30 N·m', 30, 'N·m'],
    ['30 Nm', 30, 'N·m'],
    ['30N.m', 30, 'N·m'],
    ['30 N-m', 30, 'N·m'],
    ['30 N m', 30, 'N·m'],
    ['30 newton metres', 30, 'N·m'],
    ['30 Newton-meters', 30, 'N·m'],
    ['22 ft-lb', 22, 'lbf·ft'],
    ['22 ft. lbs.', 22, 'lbf·ft'],
    ['22 lb ft', 22, 'lbf·ft'],
    ['22 lbf·ft', 22, 'lbf·ft'],
    ['22 foot-pounds', 22, 'lbf·ft'],
    ['95 in-lb', 95, 'lbf·in'],
    ['95 lb/in2', 95, 'psi'],
    ['95 inch pounds', 95, 'lbf·in'],
    ['40 oz-in', 40, 'ozf·in'],
    ['3.1 kg-m', 3.1, 'kgf·m'],
    ['306 kgf-cm', 306, 'kgf·cm'],
    ['0.05 mm', 0.05, 'mm'],
    ['0,05 mm', 0.05, 'mm'],
    ['.05 mm', 0.05, 'mm'],
    ['2 thou', 2, 'thou'],
    ['0.002"', 0.002, 'in'],
    ['0.002 in.', 0.002, 'in'],
    ['3/8 in', 0.375, 'in'],
    ['1 1/2 in', 1.5, 'in'],
    ['1-1/8 inches', 1.125, 'in'],
    ['80 microinches', 80, 'microinch'],
    ['0.8 µm', 0.8, 'um'],
    ['0.8 μm', 0.8, 'um'],
    ['12 500 N', 12_500, 'N'],
    ['12,500.5 N', 12_500.5, 'N'],
    ['90°', 90, 'deg'],
    ['90 degrees', 90, 'deg'],
    ['1/4 turn', 0.25, 'turn'],
    ['-37 °C', -37, 'degC'],
    ['−37 deg C', -37, 'degC'],
    ['194 °F', 194, 'degF'],
    ['10 kgf/cm²', 10, 'kgf/cm2'],
    ['640 N/mm²', 640, 'MPa'],
    ['8.5 litres', 8.5, 'L'],
    ['2 imp gal', 2, 'imp gal'],
    ['9 US qt', 9, 'US qt'],
    ['10 min', 10, 'min'],
    ['850 rpm', 850, 'rpm'],
    ['12.6 V', 12.6, 'V'],
    ['50 %', 50, '%'],
  ])('%s', (text, value, unit) => {
    expect(read(text)).toEqual({ printed: text, value, unit });
  });

  test('every unit can be read back from its own name where the dimension is known', () => {
    for (const unit of UNIT_NAMES) expect(read(`5 ${unit}`, dimensionOf(unit)), unit).toMatchObject({ value: 5, unit });
  });
});

describe('ranges and tolerances', () => {
  test.each<[string, number, UnitName, number, number]>([
    ['85-95°', 90, 'deg', 85, 95],
    ['85–95°', 90, 'deg', 85, 95],
    ['85° to 95°', 90, 'deg', 85, 95],
    ['90 ± 5 deg', 90, 'deg', 85, 95],
    ['90° +/- 5°', 90, 'deg', 85, 95],
    ['28-31 ft-lb', 29.5, 'lbf·ft', 28, 31],
    ['0.05 mm-0.10 mm', 0.075, 'mm', 0.05, 0.1],
    ['0.0135-0.0185 in', 0.016, 'in', 0.0135, 0.0185],
    ['20 kgf/cm2 - 30 kgf/cm2', 25, 'kgf/cm2', 20, 30],
    ['-20 to -10 °C', -15, 'degC', -20, -10],
  ])('%s', (text, value, unit, least, most) => {
    expect(read(text)).toEqual({ printed: text, value, unit, window: { least, most } });
  });
});

describe('figures printed beside each other', () => {
  test.each<[string, readonly string[]]>([
    ['30 N·m (22 lbf·ft)', ['30 N·m', '22 lbf·ft']],
    ['22 ft-lb [30 Nm]', ['22 ft-lb', '30 Nm']],
    ['30 N·m/22 lbf·ft', ['30 N·m', '22 lbf·ft']],
    ['0.05 mm, 0.002 in', ['0.05 mm', '0.002 in']],
    ['170 N-m / 1733 kgf-cm / 125 ft-lb', ['170 N-m', '1733 kgf-cm', '125 ft-lb']],
    ['85-95 °C (185-203 °F)', ['85-95 °C', '185-203 °F']],
  ])('%s', (text, parts) => {
    const figure = parsePrinted(text, undefined, ENGLISH);
    expect(figure.ok && [figure.value, ...(figure.value.also ?? [])].map((f) => f.printed)).toEqual(parts);
  });

  test('a pound beside a torque is still a foot-pound or an inch-pound', () => {
    expect(read('30 N·m (22 lb)')).toEqual([{ code: 'ambiguous-unit', given: 'lb', could: ['lbf·ft', 'lbf·in'] }]);
  });

  test('a pound beside a mass is a pound', () => {
    expect(read('25 kg (55 lb)')).toMatchObject({ unit: 'kg', also: [{ value: 55, unit: 'lb' }] });
  });
});

describe('what cannot be taken as it stands', () => {
  test.each<[string, Dimension | undefined, object]>([
    ['95 pounds', 'torque', { code: 'ambiguous-unit', given: 'pounds', could: ['lbf·ft', 'lbf·in'] }],
    ['95 lb', undefined, { code: 'ambiguous-unit', given: 'lb', could: ['lbf·ft', 'lbf·in', 'lbf', 'psi', 'lb'] }],
    ['2 gal', undefined, { code: 'ambiguous-unit', given: 'gal', could: ['US gal', 'imp gal'] }],
    ['2 quarts', 'volume', { code: 'ambiguous-unit', given: 'quarts', could: ['US qt', 'imp qt'] }],
    ['30', undefined, { code: 'unit-missing', given: '30' }],
    ['30 blarg', undefined, { code: 'unknown-unit', given: 'blarg' }],
    ['30 constructor', undefined, { code: 'unknown-unit', given: 'constructor' }],
    ['1,250 N', undefined, { code: 'ambiguous-comma', given: '1,250' }],
    ['1.2.3 mm', undefined, { code: 'not-a-number', given: '1.2.3' }],
    ['1/0 in', undefined, { code: 'not-a-number', given: '1/0' }],
    ['95-85°', undefined, { code: 'range-reversed', given: '95-85°' }],
    ['20 N·m - 30 lbf·ft', undefined, { code: 'two-units-in-a-range', given: '20 N·m - 30 lbf·ft' }],
    ['40 N·m + 90°', undefined, { code: 'not-a-figure', given: '40 N·m + 90°' }],
    ['tight', undefined, { code: 'not-a-figure', given: 'tight' }],
    ['', undefined, { code: 'not-a-figure', given: '' }],
    ['()', undefined, { code: 'not-a-figure', given: '()' }],
    ['30 psi', 'torque', { code: 'wrong-dimension', given: 'psi', wanted: 'torque', text: '30 psi' }],
    ['30 N·m (22 psi)', undefined, { code: 'wrong-dimension', given: 'psi', wanted: 'torque', text: '22 psi' }],
  ])('%s', (text, wanted, issue) => {
    expect(read(text, wanted)).toEqual([issue]);
  });

  test('every faulty part is reported, not only the first', () => {
    expect(read('30 blarg (22 blurg)')).toEqual([
      { code: 'unknown-unit', given: 'blarg' },
      { code: 'unknown-unit', given: 'blurg' },
    ]);
  });
});
