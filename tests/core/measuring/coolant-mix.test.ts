import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { litres, percent } from '../../../src/core/fastening/quantity';
import { drainAndRefill, freshFill, type MixShares, topUp } from '../../../src/core/measuring/coolant-mix';

const shares = (present: number, wanted: number, concentrate = 100): MixShares => ({
  present: percent(present),
  wanted: percent(wanted),
  concentrate: percent(concentrate),
});

describe('worked mixtures (derived: volume balance)', () => {
  test('half of 8.5 L is 4.25 L of each', () => {
    expect(freshFill(litres(8.5), percent(50), percent(100))).toMatchObject({
      ok: true,
      value: { concentrate: 4.25, water: 4.25 },
    });
  });

  test('10 L from 30 to 50 %: 2.857 L out and undiluted in', () => {
    const found = drainAndRefill(litres(10), shares(30, 50));
    if (!found.ok) throw new Error(found.error.code);
    expect(found.value.volume).toBeCloseTo(2.857, 3);
    expect(found.value.working.result).toEqual({ name: 'x', value: found.value.volume, unit: 'L' });
  });

  test('12 L with 4 L of flushing water left in the block: 6 L undiluted, 2 L water', () => {
    expect(topUp(litres(12), litres(8), shares(0, 50))).toMatchObject({
      ok: true,
      value: { concentrate: 6, water: 2 },
    });
  });

  test('ready-mixed at 50 % fills an empty system by itself', () => {
    expect(freshFill(litres(8), percent(50), percent(50))).toMatchObject({
      ok: true,
      value: { concentrate: 8, water: 0 },
    });
  });
});

describe('mixtures that cannot be made', () => {
  test.each([
    ['too much water left', 12, 4, shares(0, 50), { code: 'drain-more', drained: 4, needed: 6 }],
    ['more out than it holds', 8, 9, shares(0, 50), { code: 'drained-more-than-held', drained: 9, capacity: 8 }],
    ['weak concentrate', 8, 8, shares(0, 50, 40), { code: 'concentrate-too-weak', concentrate: 40, wanted: 50 }],
    ['still stronger than wanted', 8, 1, shares(60, 30), { code: 'already-there', present: 60, wanted: 30 }],
    ['more than all of it', 8, 8, shares(0, 101), { code: 'share-out-of-range', name: 'wanted', given: 101 }],
    ['less than none', 8, 8, shares(-1, 50), { code: 'share-out-of-range', name: 'present', given: -1 }],
    ['an empty bottle', 8, 8, shares(0, 0, 0), { code: 'share-out-of-range', name: 'concentrate', given: 0 }],
    ['no system', 0, 1, shares(0, 50), { code: 'not-positive', name: 'V', given: 0 }],
  ])('%s', (_, capacity, drained, given, error) => {
    expect(topUp(litres(capacity), litres(drained), given)).toEqual({ ok: false, error });
  });

  test('a mixture already there needs no draining', () => {
    expect(drainAndRefill(litres(10), shares(50, 50))).toMatchObject({ ok: false, error: { code: 'already-there' } });
  });
});

test('what is poured in brings the system to the share wanted, and fills it', () => {
  const cases = fc.record({
    capacity: fc.double({ min: 1, max: 40, noNaN: true }),
    part: fc.double({ min: 0.01, max: 1, noNaN: true }),
    present: fc.integer({ min: 0, max: 60 }),
    wanted: fc.integer({ min: 1, max: 70 }),
    concentrate: fc.integer({ min: 40, max: 100 }),
  });
  fc.assert(
    fc.property(cases, ({ capacity, part, present, wanted, concentrate }) => {
      const drained = capacity * part;
      const found = topUp(litres(capacity), litres(drained), shares(present, wanted, concentrate));
      if (!found.ok) {
        expect(['drain-more', 'already-there', 'concentrate-too-weak']).toContain(found.error.code);
        return;
      }
      const { concentrate: poured, water } = found.value;
      expect(poured + water).toBeCloseTo(drained, 9);
      const reached = ((capacity - drained) * present + poured * concentrate) / capacity;
      expect(reached).toBeCloseTo(wanted, 6);
    }),
  );
});
