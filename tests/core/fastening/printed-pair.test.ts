import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readWordingFile } from '../../../src/cli/tongue-files';
import { parsePrinted } from '../../../src/core/fastening/printed-figure';
import { pairDisagreements } from '../../../src/core/fastening/printed-pair';
import { convert } from '../../../src/core/fastening/quantity';

const ENGLISH = readWordingFile('en').units;

const disagreements = (text: string) => {
  const figure = parsePrinted(text, undefined, ENGLISH);
  if (!figure.ok) throw new Error(`unreadable: ${text}`);
  return pairDisagreements(figure.value);
};

describe('pairs that differ only by the rounding of their makers', () => {
  test.each([
    ['30 N·m / 306 kgf·cm / 22 lbf·ft', 'service-manual triple'],
    ['170 N·m / 1733 kgf·cm / 125 ft-lb', 'service-manual triple'],
    ['40 N·m (29.5 lb-ft)', 'US Army TM 10-3930-669-20'],
    ['82 N·m (60 lbf·ft)', 'common practice: 0.8 % apart'],
    ['80 N·m (58.4 lbf·ft)', 'common practice: 1 % apart, more than the rounding alone'],
    ['0.0135-0.0185 in (0.343-0.470 mm)', 'US Army TM 55-1905-223-24-1'],
    ['0.008 in (0.2 mm)', 'common practice: thou rounded to a tenth'],
    ['0.05 mm (0.002 in)', 'common practice'],
    ['3 thou (0.076 mm)', 'workshop rule for head flatness'],
    ['0.004 in (0.102 mm)', 'workshop rule for head flatness'],
    ['150 psi (1035 kPa)', 'common practice'],
    ['85-95 °C (185-203 °F)', 'exact by definition'],
    ['1/4 in (6.35 mm)', 'exact by definition'],
  ])('%s (%s)', (text) => {
    expect(disagreements(text)).toEqual([]);
  });
});

describe('misprints seen in manuals', () => {
  test.each([
    ['0.15 mm (0.014 in)', 137, 'should be 0.006 in'],
    ['1.0 mm (0.004 in)', 90, '0.004 in is 0.10 mm'],
    ['1.78-4.57 µm (15-80 microinch)', 79, '15-80 microinch is 0.381-2.032 µm'],
    ['8.0 N·m (95 lbf·in)', 34, 'a pair that is a third apart'],
    ['95 lbf·in (95 lbf·ft)', 1100, 'twelve times apart: the wrong pound'],
    ['90 °C (212 °F)', 11, 'a temperature has no percentage of slack'],
  ])('%s', (text, percent) => {
    const [found] = disagreements(text);
    expect(found?.code).toBe('pair-disagrees');
    expect(Math.round(found?.percent ?? 0)).toBe(percent);
  });

  test('a range is off if one of its ends is', () => {
    expect(disagreements('10-20 mm (0.39-0.97 in)')[0]?.secondInFirst).toBeCloseTo(24.638, 3);
  });

  test('each further figure is held against the first', () => {
    expect(disagreements('170 N·m / 1733 kgf·cm / 152 ft-lb').map((d) => d.second.printed)).toEqual(['152 ft-lb']);
  });
});

test('whatever is converted and rounded to three figures is never called a misprint', () => {
  const torque = fc.integer({ min: 5, max: 400 });
  fc.assert(
    fc.property(torque, (nm) => {
      const pounds = convert({ value: nm, unit: 'N·m' }, 'lbf·ft');
      const printed = pounds.ok ? pounds.value.toPrecision(3) : '';
      expect(disagreements(`${nm} N·m (${Number(printed)} lbf·ft)`)).toEqual([]);
    }),
  );
});

test('a torque pair five percent apart beyond the rounding is always caught', () => {
  fc.assert(
    fc.property(fc.integer({ min: 50, max: 400 }), (nm) => {
      const pounds = convert({ value: nm * 1.05, unit: 'N·m' }, 'lbf·ft');
      expect(disagreements(`${nm} N·m (${pounds.ok ? pounds.value.toFixed(1) : ''} lbf·ft)`)).toHaveLength(1);
    }),
  );
});
