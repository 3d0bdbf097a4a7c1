import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { base, kilopascals } from '../../../src/core/fastening/quantity';
import {
  COMPRESSION_RULES,
  type CompressionReadings,
  compressionVerdict,
} from '../../../src/core/measuring/compression';
import { neighboursAmong } from '../../../src/core/measuring/neighbours';

const psi = (...values: readonly number[]): CompressionReadings =>
  new Map(values.map((value, i) => [i + 1, base<'pressure'>(value, 'psi')]));
const judge = (readings: CompressionReadings, name: string) => {
  const rule = COMPRESSION_RULES.find((one) => one.name === name);
  const verdict = rule && compressionVerdict(readings, rule);
  if (!verdict?.ok) throw new Error(`no verdict by ${name}`);
  return verdict.value;
};

describe('the same readings pass one rule and fail another', () => {
  test.each([
    [[180, 175, 178, 130], 'lowest-75-of-highest', false, [4], 'common practice: 72.2 %'],
    [[180, 178, 176, 140], 'lowest-75-of-highest', true, [], 'common practice: 77.8 %'],
    [[180, 178, 176, 140], 'within-10-percent', false, [4], 'common practice: spread 22 %'],
    [[160, 120], 'lowest-75-of-highest', true, [], 'common practice: 160 allows 120'],
    [[160, 119], 'lowest-75-of-highest', false, [2], 'common practice'],
    [[150, 105], 'lowest-70-of-highest-and-100-psi', true, [], 'common practice: 150 allows 105'],
    [[150, 108], 'lowest-75-of-highest', false, [2], 'derived: 72 %'],
    [[150, 108], 'lowest-70-of-highest-and-100-psi', true, [], 'derived: 72 %'],
    [[130, 95], 'lowest-70-of-highest-and-100-psi', false, [2], 'common practice: 73 %, yet under 100 psi'],
    [[120, 118, 119, 90], 'none-20-below-average', true, [], 'US Army TM 1-1500-204-23-1: limit 89.4'],
    [[120, 118, 119, 89], 'none-20-below-average', false, [4], 'US Army TM 1-1500-204-23-1: limit 89.2'],
    [
      [160, 160, 160, 120],
      'none-20-below-average',
      false,
      [4],
      'US Army TM 1-1500-204-23-1: exactly 20 % below is 20 % below',
    ],
    [[120, 118, 119, 90], 'lowest-75-of-highest', true, [], 'derived: exactly 75 %'],
    [[200, 180], 'within-10-percent', true, [], 'common practice: exactly 10 %'],
  ])('%j by %s: %s', (values, name, passes, low) => {
    expect(judge(psi(...values), name)).toMatchObject({ passes, low, rule: { name } });
  });

  test('the figures behind a verdict can be said', () => {
    const verdict = judge(psi(180, 178, 176, 140), 'within-10-percent');
    expect(verdict.share).toBeCloseTo(77.8, 1);
    expect(verdict.spread).toBeCloseTo(22.2, 1);
    expect([verdict.lowest, verdict.highest]).toEqual([4, 1]);
    expect(verdict.working.result).toEqual({ name: 'spread', value: verdict.spread, unit: '%' });
    expect(judge(psi(180, 178, 176, 140), 'lowest-75-of-highest').working.result).toEqual({
      name: 'share',
      value: verdict.share,
      unit: '%',
    });
  });

  test('1035 kPa allows 724.5 by the 70 % rule (common practice)', () => {
    const readings: CompressionReadings = new Map([
      [1, kilopascals(1035)],
      [2, kilopascals(900)],
    ]);
    expect(judge(readings, 'lowest-70-of-highest-and-100-psi').needed).toBeCloseTo(724.5, 9);
  });
});

describe('readings that cannot be judged', () => {
  const [rule] = COMPRESSION_RULES;
  if (!rule) throw new Error('no rules');
  test('one cylinder has nothing to be compared with', () => {
    expect(compressionVerdict(psi(180), rule)).toEqual({ ok: false, error: { code: 'too-few-cylinders', given: 1 } });
  });
  test('a cylinder with no reading at all', () => {
    const error = { code: 'not-positive', name: '2', given: 0 };
    expect(compressionVerdict(psi(180, 0), rule)).toEqual({ ok: false, error });
  });
});

describe('neighbours stand side by side in a bank, whatever their numbers (common practice)', () => {
  const ACROSS = [
    [1, 3, 5],
    [2, 4, 6],
  ] as const;
  const ALONG = [
    [1, 2, 3],
    [4, 5, 6],
  ] as const;
  test.each([
    [[3, 5], ACROSS, [[3, 5]]],
    [[1, 2], ACROSS, []],
    [[1, 2], ALONG, [[1, 2]]],
    [[3, 4], ALONG, []],
    [
      [1, 2, 3],
      ALONG,
      [
        [1, 2],
        [2, 3],
      ],
    ],
    [[1, 3], ALONG, []],
    [[], ALONG, []],
  ])('%j in %j: %j', (low, banks, pairs) => {
    expect(neighboursAmong(low, banks)).toEqual(pairs);
  });
});

test('raising the lowest cylinder never turns a pass into a failure, and the unit does not matter', () => {
  const readings = fc.array(fc.integer({ min: 60, max: 240 }), { minLength: 2, maxLength: 8 });
  fc.assert(
    fc.property(readings, fc.constantFrom(...COMPRESSION_RULES), (values, rule) => {
      const before = judge(psi(...values), rule.name);
      const lifted = values.map((v, i) => (i + 1 === before.lowest ? Math.min(v + 1, Math.max(...values)) : v));
      if (before.passes) expect(judge(psi(...lifted), rule.name).passes).toBe(true);
      expect(before.low.every((cylinder) => cylinder >= 1 && cylinder <= values.length)).toBe(true);
      if (!before.passes) expect(before.low[0]).toBe(before.lowest);
    }),
  );
});
