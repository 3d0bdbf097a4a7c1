import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { millimetres } from '../../../src/core/fastening/quantity';
import { gapWith, type ShimRange, shimFor, type ValveGap } from '../../../src/core/measuring/shim';
import { swapShims } from '../../../src/core/measuring/shim-swap';

const valve = (shim: number, gap: number, wanted = 0.25): ValveGap => ({
  shim: millimetres(shim),
  gap: millimetres(gap),
  wanted: millimetres(wanted),
});
const STEPS: ShimRange = { least: millimetres(2), most: millimetres(3.3), step: millimetres(0.05) };

describe('the shim for a gap: new = old + measured - wanted, to the nearest size', () => {
  test.each([
    ['2.95 in, gap 0.47', 2.95, 0.47, 3.17, 3.15, 0.27, 'common practice; a shim chart agrees'],
    ['already right', 2.5, 0.25, 2.5, 2.5, 0.25, 'common practice'],
    ['too tight', 2.5, 0.1, 2.35, 2.35, 0.25, 'common practice'],
    ['no gap at all', 2.5, 0, 2.25, 2.25, 0.25, 'common practice'],
    ['largest there is', 3.2, 0.35, 3.3, 3.3, 0.25, 'common practice'],
  ])('%s', (_, shim, gap, ideal, size, left) => {
    expect(shimFor(valve(shim, gap), STEPS)).toMatchObject({ ok: true, value: { ideal, shim: size, gap: left } });
  });

  test.each([
    ['larger than any there is', valve(3.3, 0.4), { code: 'no-such-shim', ideal: 3.45 }],
    ['smaller than any there is', valve(2, 0.1), { code: 'no-such-shim', ideal: 1.85 }],
    ['a gap below nothing', valve(2.5, -0.1), { code: 'negative-gap', given: -0.1 }],
    ['no gap wanted', valve(2.5, 0.2, 0), { code: 'not-positive', name: 'wanted' }],
  ])('%s', (_, given, error) => {
    expect(shimFor(given, STEPS)).toMatchObject({ ok: false, error });
  });

  test('steps too coarse for the window are told with the best there is', () => {
    const coarse = { ...STEPS, step: millimetres(0.3) };
    const result = shimFor(valve(2.4, 0.4), coarse, { least: 0.21, most: 0.3 });
    expect(result).toMatchObject({ ok: false, error: { code: 'gap-outside-window', choice: { shim: 2.6, gap: 0.2 } } });
  });

  test('the gap left is never more than half a step from the one wanted', () => {
    const cases = fc.record({ shim: fc.integer({ min: 42, max: 64 }), gap: fc.integer({ min: 0, max: 60 }) });
    fc.assert(
      fc.property(cases, ({ shim, gap }) => {
        const result = shimFor(valve(shim * 0.05, gap / 100), STEPS);
        if (!result.ok) expect(result.error.code).toBe('no-such-shim');
        else expect(Math.abs(result.value.gap - 0.25)).toBeLessThanOrEqual(0.025 + 1e-9);
      }),
    );
  });
});

describe('sharing out the shims that came out', () => {
  const window = { least: 0.23, most: 0.27 };
  const fits = (v: ValveGap | undefined, s: number | undefined) =>
    v !== undefined && s !== undefined && Math.abs(gapWith(v, millimetres(s)) - 0.25) <= 0.05;

  test('two valves that need each other’s shim swap them', () => {
    const valves = [valve(2.5, 0.35), valve(2.6, 0.15)];
    expect(swapShims(valves, [millimetres(2.5), millimetres(2.6)], window)).toEqual([1, 0]);
  });

  test('a valve served first gives way when it has another choice', () => {
    // Both sizes fit the first valve, only the first fits the second.
    const valves = [valve(2.5, 0.26), valve(2.5, 0.24)];
    expect(swapShims(valves, [millimetres(2.5), millimetres(2.53)], { least: 0.23, most: 0.26 })).toEqual([1, 0]);
  });

  test('what nothing fits must be bought', () => {
    expect(swapShims([valve(2.5, 0.9), valve(2.5, 0.25)], [millimetres(2.5)], window)).toEqual([undefined, 0]);
    expect(swapShims([], [], window)).toEqual([]);
  });

  /** The most valves that can be served, by trying everything. */
  const mostServed = (valves: readonly ValveGap[], removed: readonly number[]): number => {
    const [first, ...rest] = valves;
    if (!first) return 0;
    const served = removed.flatMap((shim, i) =>
      fits(first, shim) ? [1 + mostServed(rest, removed.toSpliced(i, 1))] : [],
    );
    return Math.max(mostServed(rest, removed), ...served);
  };

  test('no shim is given twice, each fits, and no other sharing serves more valves', () => {
    const sizes = fc.array(fc.integer({ min: 42, max: 48 }), { minLength: 1, maxLength: 5 });
    const gaps = fc.array(fc.integer({ min: 15, max: 35 }), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(sizes, gaps, (shims, found) => {
        const removed = shims.map((s) => millimetres(s * 0.05));
        const valves = found.map((g) => valve(2.25, g / 100));
        const swaps = swapShims(valves, removed, { least: 0.2, most: 0.3 });
        const given = swaps.filter((shim) => shim !== undefined);
        expect(new Set(given).size).toBe(given.length);
        for (const [v, shim] of swaps.entries())
          if (shim !== undefined) expect(fits(valves[v], removed[shim])).toBe(true);
        expect(given.length).toBe(mostServed(valves, removed));
      }),
    );
  });
});
