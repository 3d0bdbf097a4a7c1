import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { base, inUnit, millimetres, newtonMetres, newtons } from '../../../src/core/fastening/quantity';
import {
  TORQUE_COEFFICIENTS,
  tensionFrom,
  torqueAfterChange,
  torqueFor,
} from '../../../src/core/fastening/short-torque';
import { stressArea, unifiedThread } from '../../../src/core/fastening/thread';

const one = (k: number) => ({ least: k, most: k });
const footPounds = (pounds: number, inches: number, k: number): number => {
  const result = torqueFor(base<'force'>(pounds, 'lbf'), base<'length'>(inches, 'in'), one(k));
  return result.ok ? inUnit<'torque'>(result.value.least, 'lbf·ft') : Number.NaN;
};
const areaOf = (inches: number, perInch: number): number => {
  const thread = unifiedThread(base<'length'>(inches, 'in'), perInch);
  return thread.ok ? stressArea(thread.value) / 25.4 ** 2 : Number.NaN;
};

describe('a textbook set: 0.190 in, 1275 lbf (Mechanical Fastening, Joining and Assembly, p. 85)', () => {
  test.each([
    [0.3, 72.7],
    [0.25, 60.6],
    [0.2, 48.5],
    [0.15, 36.3],
    [0.1, 24.2],
  ])('K %d gives %d lbf·in', (k, printed) => {
    expect(Math.abs(12 * footPounds(1275, 0.19, k) - printed)).toBeLessThan(0.051);
  });
});

describe('SAE grade 2 at three quarters of proof, K 0.20 (a fastener supplier’s table)', () => {
  test.each([
    [1 / 4, 1312, 5.4, 0.1], // printed truncated: 5.47
    [3 / 8, 3197, 20, 0.5],
    [7 / 16, 4385, 32, 0.5],
    [1 / 2, 5853, 48.8, 0.05],
  ])('%d in, %d lbf: %d lbf·ft', (inches, pounds, printed, rounding) => {
    expect(Math.abs(footPounds(pounds, inches, 0.2) - printed)).toBeLessThanOrEqual(rounding);
  });
});

describe('clamp at a fixed stress on the area (a safety guide’s table)', () => {
  const SIZES = [
    [3 / 8, 16],
    [7 / 16, 14],
    [1 / 2, 13],
  ] as const;
  test.each([
    ['grade 5', 69_000, 0.2, [33, 53, 82]],
    ['grade 5', 69_000, 0.22, [37, 59, 90]],
    ['grade 8', 98_000, 0.2, [47, 76, 116]],
    ['grade 8', 98_000, 0.22, [52, 83, 127]], // 83 is printed truncated: 83.6
  ] as const)('%s at %d psi, K %d', (_, psi, k, printed) => {
    for (const [i, [inches, perInch]] of SIZES.entries()) {
      const torque = footPounds(psi * areaOf(inches, perInch), inches, k);
      expect(Math.abs(torque - (printed[i] ?? 0)), `${inches} in`).toBeLessThan(0.75);
    }
  });

  test('spelled out: 1/2-13 grade 5, 9791 lbf, 81.6 lbf·ft', () => {
    expect(69_000 * areaOf(1 / 2, 13)).toBeCloseTo(9791, -1);
    expect(footPounds(9791, 1 / 2, 0.2)).toBeCloseTo(81.6, 1);
  });
});

describe('a condition is a range', () => {
  test('a printed torque on zinc leaves a tension that sources put a third apart', () => {
    const zinc = TORQUE_COEFFICIENTS.find((k) => k.condition === 'zinc-plated');
    const result = tensionFrom(newtonMetres(50), millimetres(10), zinc ?? one(0));
    if (!result.ok) throw new Error('refused');
    expect(result.value.least).toBeCloseTo(50_000 / 2.95, 6);
    expect(result.value.most).toBeCloseTo(50_000 / 2, 6);
    expect(result.value.workings.map((w) => w.result.value)).toEqual([result.value.least, result.value.most]);
  });

  test('every range is the right way round', () => {
    for (const { least, most } of TORQUE_COEFFICIENTS) expect(least).toBeLessThanOrEqual(most);
  });
});

describe('another lubricant, the same tension', () => {
  test.each([
    [130, 0.17, 0.09, 68.8, 'derived; a page that prints 53 for it is wrong'],
    [40, 0.2, 0.12, 24, 'derived'],
    [40, 0.2, 0.2, 40, 'nothing changed'],
  ])('%d at K %d is %d at K %d', (torque, from, to, expected) => {
    const result = torqueAfterChange(newtonMetres(torque), from, to);
    expect(result.ok && result.value.torque).toBeCloseTo(expected, 1);
  });

  test('from 628 dry to 377 oiled is a coefficient 40 % lower (common practice: 35 to 45 %)', () => {
    const result = torqueAfterChange(newtonMetres(628), 0.2, 0.12);
    expect(result.ok && result.value.torque).toBeCloseTo(377, 0);
  });
});

test('torque and tension undo each other', () => {
  const figure = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  fc.assert(
    fc.property(figure(100, 2e5), figure(3, 30), figure(0.08, 0.35), (force, d, k) => {
      const torque = torqueFor(newtons(force), millimetres(d), one(k));
      const back = torque.ok ? tensionFrom(torque.value.least, millimetres(d), one(k)) : torque;
      expect((back.ok ? back.value.least : Number.NaN) / force).toBeCloseTo(1, 9);
    }),
  );
});

test.each([
  [0, 10, 0.2, 'F'],
  [1000, 0, 0.2, 'D'],
  [1000, 10, -0.2, 'K'],
  [Number.POSITIVE_INFINITY, 10, 0.2, 'F'],
])('F %d, D %d, K %d is refused for %s', (force, d, k, name) => {
  expect(torqueFor(newtons(force), millimetres(d), one(k))).toMatchObject({ ok: false, error: { name } });
});
