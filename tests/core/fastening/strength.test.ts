import { describe, expect, test } from 'vitest';
import { base, inUnit, millimetres, newtons, squareMillimetres } from '../../../src/core/fastening/quantity';
import {
  ISO_898_1,
  proofLoad,
  SAE_J429,
  type Strength,
  strengthOf,
  utilisation,
} from '../../../src/core/fastening/strength';
import { metricThread, stressArea, type Thread, unifiedThread } from '../../../src/core/fastening/thread';

const metric = (d: number, p: number): Thread => {
  const thread = metricThread(millimetres(d), millimetres(p));
  if (!thread.ok) throw new Error(`no thread M${d}x${p}`);
  return thread.value;
};
const unified = (inches: number, threadsPerInch: number): Thread => {
  const thread = unifiedThread(base<'length'>(inches, 'in'), threadsPerInch);
  if (!thread.ok) throw new Error(`no thread ${inches}-${threadsPerInch}`);
  return thread.value;
};
const row = (table: readonly Strength[], grade: string, d: number): Strength => {
  const strength = strengthOf(table, grade, millimetres(d));
  if (!strength.ok) throw new Error(`no strength for ${grade}`);
  return strength.value;
};
/** The standard multiplies the area already rounded to three figures. */
const roundedArea = (thread: Thread) => squareMillimetres(Number(stressArea(thread).toPrecision(3)));
const load = (thread: Thread, strength: Strength): number => {
  const result = proofLoad(roundedArea(thread), strength);
  return result.ok ? result.value.load : Number.NaN;
};
/** One unit in the third figure, which is as far as printed loads go. */
const thirdFigure = (value: number): number => 10 ** (Math.floor(Math.log10(value)) - 2);

describe('ISO 898-1 coarse threads: area, proof loads and ultimate loads as printed', () => {
  const SEEN = 'published load table';
  test.each<[number, number, number, readonly number[], readonly number[], string]>([
    [6, 1, 20.1, [11_600, 16_700, 19_500], [16_100, 20_900, 24_500], SEEN],
    [8, 1.25, 36.6, [21_200, 30_400, 35_500], [29_200, 38_100, 44_600], SEEN],
    [10, 1.5, 58, [33_700, 48_100, 56_300], [46_400, 60_300, 70_800], SEEN],
    [12, 1.75, 84.3, [48_900, 70_000, 81_800], [67_400, 87_700, 103_000], SEEN],
    [14, 2, 115, [66_700, 95_500, 112_000], [92_000, 120_000, 140_000], SEEN],
    [16, 2, 157, [91_000, 130_000, 152_000], [125_000, 163_000, 192_000], SEEN],
  ])('M%d x %d', (d, p, area, proofs, ultimates) => {
    const thread = metric(d, p);
    expect(roundedArea(thread)).toBeCloseTo(area, 1);
    for (const [i, grade] of ['8.8', '10.9', '12.9'].entries()) {
      const strength = row(ISO_898_1, grade, d);
      const [proof, ultimate] = [proofs[i] ?? 0, ultimates[i] ?? 0];
      expect(Math.abs(load(thread, strength) - proof), `proof ${grade}`).toBeLessThanOrEqual(thirdFigure(proof));
      const broken = roundedArea(thread) * strength.tensile;
      expect(Math.abs(broken - ultimate), `ultimate ${grade}`).toBeLessThanOrEqual(thirdFigure(ultimate));
    }
  });
});

describe('ISO 898-1 fine threads, from memory', () => {
  test.each([
    [8, 1, 39.2, [22_700, 32_500, 38_000]],
    [10, 1.25, 61.2, [35_500, 50_800, 59_400]],
    [12, 1.25, 92.1, [53_400, 76_400, 89_300]],
    [12, 1.5, 88.1, [51_100, 73_100, 85_500]],
    [14, 1.5, 125, [72_500, 104_000, 121_000]],
  ] as const)('M%d x %d', (d, p, area, proofs) => {
    expect(roundedArea(metric(d, p))).toBeCloseTo(area, 1);
    for (const [i, grade] of ['8.8', '10.9', '12.9'].entries()) {
      const proof = proofs[i] ?? 0;
      const found = load(metric(d, p), row(ISO_898_1, grade, d));
      expect(Math.abs(found - proof), grade).toBeLessThanOrEqual(thirdFigure(proof));
    }
  });
});

describe('SAE J429: areas and proof loads within half a percent', () => {
  test.each([
    [3 / 8, 16, 0.0775, 6600, 9300, 'published load table'],
    [7 / 16, 14, 0.1063, 9050, 12_800, 'published load table'],
    [1 / 2, 13, 0.1419, 12_100, 17_000, 'from memory'],
  ])('%d-%d (area %d in2)', (inches, perInch, area, five, eight) => {
    const thread = unified(inches, perInch);
    expect(stressArea(thread) / 25.4 ** 2).toBeCloseTo(area, 4);
    for (const [grade, printed] of [
      ['grade 5', five],
      ['grade 8', eight],
    ] as const) {
      const proof = proofLoad(stressArea(thread), row(SAE_J429, grade, thread.diameter));
      const pounds = proof.ok ? inUnit<'force'>(proof.value.load, 'lbf') : Number.NaN;
      expect(Math.abs(pounds / printed - 1), grade).toBeLessThan(0.005);
    }
  });
});

describe('which row of a table applies', () => {
  test.each([
    ['8.8', 16, 580],
    ['8.8', 16.1, 600],
    ['8.8', 8, 580],
    ['12.9', 30, 970],
  ])('%s at %d mm has a proof stress of %d MPa (published class table)', (grade, d, proof) => {
    expect(row(ISO_898_1, grade, d).proof).toBe(proof);
  });

  test('grade 5 loses strength above one inch (published SAE J429 table)', () => {
    expect(row(SAE_J429, 'grade 5', 25.4).proof / row(SAE_J429, 'grade 5', 25.5).proof).toBeCloseTo(85 / 74, 9);
  });

  test.each([
    ['4.8', 10],
    ['8.8', 40],
  ])('%s at %d mm is not listed, and says so', (grade, d) => {
    expect(strengthOf(ISO_898_1, grade, millimetres(d))).toEqual({
      ok: false,
      error: { code: 'no-strength-listed', grade, diameter: d },
    });
  });
});

test('utilisation is the share of the proof load; above a hundred the bolt has taken a set', () => {
  expect(utilisation(newtons(26_600), newtons(35_500))).toBeCloseTo(74.93, 2);
  expect(utilisation(newtons(36_000), newtons(35_500))).toBeGreaterThan(100);
});

describe('impossible threads', () => {
  test.each([
    [0, 1, { code: 'not-positive', name: 'd', given: 0 }],
    [10, -1, { code: 'not-positive', name: 'P', given: -1 }],
    [6, 2, { code: 'pitch-too-coarse', given: 2 }],
  ])('d %d, pitch %d', (d, p, error) => {
    expect(metricThread(millimetres(d), millimetres(p))).toEqual({ ok: false, error });
  });

  test('no threads to the inch', () => {
    expect(unifiedThread(base<'length'>(0.5, 'in'), 0).ok).toBe(false);
  });
});
