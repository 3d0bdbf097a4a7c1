import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { offsetsOf, rowAt, spanOf } from '../../src/ui/record/window';

const heights = fc.array(fc.integer({ min: 1, max: 300 }), { minLength: 1, maxLength: 200 });
const rows = (count: number) => Array.from({ length: count }, (_, i) => ({ key: `line ${i}` }));
const known = (all: readonly number[]) => new Map(all.map((h, i) => [`line ${i}`, h]));
const offsetsFor = (all: readonly number[]) => offsetsOf({ rows: rows(all.length), guess: 40, known: known(all) });

describe('drawing only the rows in sight', () => {
  test('an unmeasured row counts as the guess', () => {
    expect([...offsetsOf({ rows: rows(3), guess: 40, known: new Map([['line 1', 100]]) })]).toEqual([0, 40, 140, 180]);
  });

  test('the row at a height is the one that a plain walk finds', () => {
    fc.assert(
      fc.property(heights, fc.integer({ min: 0, max: 70_000 }), (all, y) => {
        const offsets = offsetsFor(all);
        let walked = 0;
        while (walked < all.length - 1 && (offsets[walked + 1] ?? 0) <= y) walked++;
        expect(rowAt(offsets, y)).toBe(walked);
      }),
    );
  });

  test('what is drawn covers the view, and drawn plus empty is always the whole height', () => {
    fc.assert(
      fc.property(heights, fc.nat(60_000), fc.nat(2000), fc.nat(1000), (all, scrolled, view, spare) => {
        const offsets = offsetsFor(all);
        const total = offsets[all.length] ?? 0;
        const top = Math.min(scrolled, Math.max(0, total - view));
        const { from, to, before, after } = spanOf(offsets, top, view, spare);
        const drawn = all.slice(from, to).reduce((a, b) => a + b, 0);
        expect(before + drawn + after).toBe(total);
        expect(before).toBeLessThanOrEqual(top);
        expect(before + drawn).toBeGreaterThanOrEqual(Math.min(total, top + view));
      }),
    );
  });

  test('of twenty thousand lines only a screenful and its spare are drawn', () => {
    const offsets = offsetsOf({ rows: rows(20_000), guess: 40, known: new Map() });
    const { from, to } = spanOf(offsets, 400_000, 1200, 600);
    expect(from).toBe(9985);
    expect(to - from).toBe(61);
  });

  test('an empty list draws nothing', () => {
    expect(spanOf(offsetsOf({ rows: rows(0), guess: 40, known: new Map() }), 0, 800, 600)).toEqual({
      from: 0,
      to: 0,
      before: 0,
      after: 0,
    });
  });
});
