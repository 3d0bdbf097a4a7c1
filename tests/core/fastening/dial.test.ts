import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readWordingFile } from '../../../src/cli/tongue-files';
import { dial } from '../../../src/core/fastening/dial';
import { parsePrinted } from '../../../src/core/fastening/printed-figure';
import { base, degrees, millimetres, type Printed } from '../../../src/core/fastening/quantity';
import type { Wrench } from '../../../src/core/fastening/wrench';
import type { Adapter } from '../../../src/core/fastening/wrench-setting';

const ENGLISH = readWordingFile('en').units;

const printed = (text: string): Printed => {
  const figure = parsePrinted(text, undefined, ENGLISH);
  if (!figure.ok) throw new Error(`unreadable: ${text}`);
  return figure.value;
};
const STRAIGHT: Adapter = { kind: 'concentric' };
const clicker: Wrench = {
  id: 'w1',
  say: 'the half inch',
  unit: 'N·m',
  least: 20,
  most: 100,
  graduation: 1,
  dropped: false,
};
const pounder: Wrench = { ...clicker, unit: 'lbf·ft', least: 0, most: 150 };

describe('the setting after correction must lie in the usable range', () => {
  test.each<[string, string, number | object, string]>([
    ['95 in-lb', '95 lbf·in on 0-150 lbf·ft', { code: 'below-range', percent: 5.3 }, 'common practice: 20 % rule'],
    ['30 lbf·ft', 'exactly 20 % of full scale', 30, 'common practice: 20 % rule'],
    ['29 lbf·ft', 'just below', { code: 'below-range', percent: 19.3 }, 'common practice: 20 % rule'],
    ['65 lbf·ft', 'well inside', 65, 'common practice: 20 % rule'],
    ['150 lbf·ft', 'full scale', 150, 'common practice'],
    ['151 lbf·ft', 'past full scale', { code: 'above-range', percent: 100.7 }, 'common practice'],
  ])('%s (%s)', (text, _, expected) => {
    const result = dial(printed(text), pounder, STRAIGHT);
    if (typeof expected === 'number') expect(result.ok && result.value.set.value).toBe(expected);
    else {
      const error = result.ok ? undefined : result.error;
      const percent = error && 'percentOfMost' in error ? Number(error.percentOfMost.toFixed(1)) : undefined;
      expect({ code: error?.code, percent }).toEqual(expected);
    }
  });

  test('the lowest mark counts where it lies above 20 %', () => {
    const result = dial(printed('45 N·m'), { ...clicker, least: 50 }, STRAIGHT);
    expect(result).toMatchObject({ ok: false, error: { code: 'below-range', setting: 45, least: 50, unit: 'N·m' } });
  });

  test('40 lbf·ft through a 4 in adapter on a 12 in wrench of 30-150 is set to 30, just inside', () => {
    const wrench: Wrench = { ...pounder, least: 30, lever: base<'length'>(12, 'in') };
    const adapter: Adapter = { kind: 'offset', length: base<'length'>(4, 'in'), angle: degrees(0) };
    const result = dial(printed('40 lbf·ft'), wrench, adapter);
    expect(result).toMatchObject({
      ok: true,
      value: { set: { printed: '30 lbf·ft' }, roundingPercent: 0, atFastener: 40 },
    });
    expect(result.ok && result.value.working?.formula).toBe('adapter-setting');
    expect(dial(printed('39 lbf·ft'), wrench, adapter).ok).toBe(false);
  });
});

describe('rounding to a mark', () => {
  test.each<[string, number, string, number]>([
    ['29.8 N·m', 0.5, '30.0 N·m', 0.671],
    ['66.7 N·m', 0.25, '66.75 N·m', 0.075],
    ['41 N·m', 2, '42 N·m', 2.439],
    ['41 N·m', 1, '41 N·m', 0],
    ['30 lbf·ft', 1, '41 N·m', 0.8],
  ])('%s to marks every %d N·m is %s', (text, graduation, set, percent) => {
    const result = dial(printed(text), { ...clicker, graduation }, STRAIGHT);
    expect(result.ok && result.value.set.printed).toBe(set);
    expect(result.ok && result.value.roundingPercent).toBeCloseTo(percent, 3);
  });

  test('what the fastener gets is told in the unit of the document', () => {
    const result = dial(printed('30 lbf·ft'), clicker, STRAIGHT);
    expect(result.ok && result.value.atFastener).toBeCloseTo(30.24, 2);
  });

  test('marks too coarse for the window are refused', () => {
    expect(dial({ ...printed('40.5-41.5 N·m') }, { ...clicker, graduation: 5 }, STRAIGHT)).toEqual({
      ok: false,
      error: { code: 'marks-too-coarse', nearest: 40, unit: 'N·m' },
    });
  });
});

test('an adapter on a wrench of unknown length is asked about, not guessed', () => {
  const adapter: Adapter = { kind: 'offset', length: millimetres(50), angle: degrees(0) };
  expect(dial(printed('40 N·m'), clicker, adapter)).toEqual({ ok: false, error: { code: 'lever-unknown' } });
});

test('a figure that is no torque is refused', () => {
  expect(dial(printed('90°'), clicker, STRAIGHT)).toMatchObject({ ok: false, error: { code: 'wrong-dimension' } });
});

test('a setting never lies off a mark, off the range or more than half a mark from the exact one', () => {
  const inputs = fc.record({
    torque: fc.double({ min: 1, max: 200, noNaN: true }),
    graduation: fc.constantFrom(0.25, 0.5, 1, 2, 5),
    length: fc.integer({ min: 10, max: 150 }),
    angle: fc.integer({ min: 0, max: 180 }),
  });
  fc.assert(
    fc.property(inputs, ({ torque, graduation, length, angle }) => {
      const wrench: Wrench = { ...clicker, graduation, lever: millimetres(400) };
      const adapter: Adapter = { kind: 'offset', length: millimetres(length), angle: degrees(angle) };
      const target: Printed = { printed: `${torque} N·m`, value: torque, unit: 'N·m' };
      const result = dial(target, wrench, adapter);
      if (!result.ok) {
        expect(['below-range', 'above-range']).toContain(result.error.code);
        return;
      }
      const { set, exact } = result.value;
      expect(set.value % graduation).toBe(0);
      expect(set.value).toBeGreaterThanOrEqual(20);
      expect(set.value).toBeLessThanOrEqual(100);
      expect(Math.abs(set.value - exact)).toBeLessThanOrEqual(graduation / 2 + 1e-9);
    }),
  );
});
