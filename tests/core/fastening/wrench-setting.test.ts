import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  base,
  degrees,
  inUnit,
  millimetres,
  type NewtonMetres,
  newtonMetres,
  type UnitIn,
} from '../../../src/core/fastening/quantity';
import { formulaOf, sourceOf } from '../../../src/core/fastening/working';
import { type Adapter, settingWith, torqueOverDrag, torqueWith } from '../../../src/core/fastening/wrench-setting';

type TorqueUnit = UnitIn<'torque'>;

const offset = (inches: number, angle: number): Adapter => ({
  kind: 'offset',
  length: base<'length'>(inches, 'in'),
  angle: degrees(angle),
});
const settingFor = (torque: NewtonMetres, lever: number, adapter: Adapter): number => {
  const result = settingWith(torque, base<'length'>(lever, 'in'), adapter);
  return result.ok ? result.value.setting : Number.NaN;
};

describe('published worked examples: wrench in, adapter in, angle, wanted, setting as printed', () => {
  const IN_LINE = 0;
  const REVERSED = 180;
  test.each<[number, number, number, number, TorqueUnit, number, number, string]>([
    [12, 2, IN_LINE, 70, 'lbf·in', 60, 0.5, 'US Army TM 9-254, 4-1 d(1), fig. 4-5'],
    [10, 4, IN_LINE, 300, 'lbf·in', 214, 0.5, 'US Army TM 1-1500-204-23-9, fig. 8-16'],
    [12, 4, IN_LINE, 40, 'lbf·ft', 30, 0.005, 'US Army TM 9-2350-277-40&P, WP 0004, fig. 6'],
    [12, 6, IN_LINE, 100, 'lbf·in', 66.7, 0.05, 'US Navy training course 14315, fig. 3-43'],
    [12, 3, IN_LINE, 30, 'lbf·ft', 24, 0.005, 'published aviation example (1 ft, 0.25 ft)'],
    [10, 1.5, IN_LINE, 135, 'lbf·in', 117.39, 0.005, 'published aviation example, lengthening'],
    [10, 1.5, REVERSED, 135, 'lbf·in', 158.82, 0.005, 'published aviation example, shortening'],
    [14, 3, IN_LINE, 20, 'lbf·ft', 16.47, 0.005, 'published vehicle example'],
    [12, 4, 90, 40, 'lbf·ft', 40, 0, 'US Army TM 9-2350-277-20-2, WP 0155: right angle, read direct'],
    [12, 4, 45, 40, 'lbf·ft', 32.37, 0.005, 'derived: L_eff 14.828 in'],
    [12, 4, 135, 40, 'lbf·ft', 52.34, 0.005, 'derived'],
    [12, 4, REVERSED, 40, 'lbf·ft', 60, 0.005, 'derived'],
    [12, 6, 45, 100, 'lbf·in', 73.9, 0.05, 'derived'],
    [12, 6, REVERSED, 100, 'lbf·in', 200, 0.05, 'derived'],
  ])('L %d, E %d, %d°, want %d %s: set %d', (lever, length, angle, wanted, unit, printed, rounding) => {
    const setting = settingFor(base<'torque'>(wanted, unit), lever, offset(length, angle));
    expect(Math.abs(inUnit<'torque'>(newtonMetres(setting), unit) - printed)).toBeLessThanOrEqual(rounding + 1e-9);
  });

  test('the inverse: 60 lbf·in on the scale is 70 at the fastener (US Army TM 9-254, 4-1 d(1))', () => {
    const result = torqueWith(base<'torque'>(60, 'lbf·in'), base<'length'>(12, 'in'), offset(2, 0));
    expect(result.ok && inUnit<'torque'>(result.value.torque, 'lbf·in')).toBeCloseTo(70, 9);
  });

  test('a reversed adapter reads higher than what the fastener gets (US Army TM 1-1500-204-23-9, fig. 8-17)', () => {
    expect(settingFor(newtonMetres(40), 12, offset(4, 180))).toBeGreaterThan(40);
  });

  test('friction drag is added to the torque wanted (FAA AC 43.13-1B, 7-40 d)', () => {
    expect(torqueOverDrag(newtonMetres(40), newtonMetres(3))).toBe(43);
  });
});

test('a right angle leaves the very figure, with no trace of a correction', () => {
  expect(settingFor(newtonMetres(40), 12, offset(4, 90))).toBe(40);
  expect(settingFor(newtonMetres(40), 12, offset(4, 270))).toBe(40);
});

test('a socket extension on the axis changes nothing', () => {
  expect(settingFor(newtonMetres(40), 12, { kind: 'concentric' })).toBe(40);
});

describe('refusals', () => {
  const L = millimetres(300);
  test.each<[string, number, number, number, object]>([
    ['no torque', 0, 50, 0, { code: 'not-positive', name: 'T', given: 0 }],
    ['a torque that is not a number', Number.NaN, 50, 0, { code: 'not-positive', name: 'T', given: Number.NaN }],
    ['an adapter of no length', 40, 0, 0, { code: 'not-positive', name: 'E', given: 0 }],
    ['an adapter that reaches back to the hand', 40, 300, 180, { code: 'no-lever', effective: 0 }],
    ['an adapter that reaches past the hand', 40, 400, 180, { code: 'no-lever', effective: -100 }],
  ])('%s', (_, torque, length, angle, error) => {
    const adapter: Adapter = { kind: 'offset', length: millimetres(length), angle: degrees(angle) };
    expect(settingWith(newtonMetres(torque), L, adapter)).toEqual({ ok: false, error });
  });

  test('a wrench of no length', () => {
    const result = torqueWith(newtonMetres(40), millimetres(-1), offset(2, 0));
    expect(result).toEqual({ ok: false, error: { code: 'not-positive', name: 'L', given: -1 } });
  });
});

test('the working names the formula, its figures and its source', () => {
  const result = settingWith(base<'torque'>(40, 'lbf·ft'), base<'length'>(12, 'in'), offset(4, 0));
  if (!result.ok) throw new Error('refused');
  const { working } = result.value;
  expect(formulaOf(working)).toContain('L / (L + E · cos a)');
  expect(sourceOf(working)).toContain('TM 9-254');
  expect(working.inputs.map((i) => `${i.name} ${i.value.toFixed(1)} ${i.unit}`)).toEqual([
    'T 54.2 N·m',
    'L 304.8 mm',
    'E 101.6 mm',
    'a 0.0 deg',
  ]);
  expect(working.result.value).toBeCloseTo(40.6745, 4);
});

test('setting and torque undo each other, and more angle never needs a lower setting', () => {
  const figures = fc.record({
    torque: fc.double({ min: 1, max: 500, noNaN: true }),
    lever: fc.double({ min: 150, max: 1000, noNaN: true }),
    length: fc.double({ min: 5, max: 140, noNaN: true }),
    angle: fc.double({ min: 0, max: 180, noNaN: true }),
    more: fc.double({ min: 0, max: 180, noNaN: true }),
  });
  fc.assert(
    fc.property(figures, ({ torque, lever, length, angle, more }) => {
      const at = (a: number): Adapter => ({ kind: 'offset', length: millimetres(length), angle: degrees(a) });
      const set = (a: number) => settingWith(newtonMetres(torque), millimetres(lever), at(a));
      const [here, further] = [set(angle), set(Math.min(180, angle + more))];
      if (!here.ok || !further.ok) throw new Error('refused');
      const back = torqueWith(here.value.setting, millimetres(lever), at(angle));
      expect(back.ok && back.value.torque).toBeCloseTo(torque, 8);
      expect(further.value.setting).toBeGreaterThanOrEqual(here.value.setting - 1e-9);
    }),
  );
});
