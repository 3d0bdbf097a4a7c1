import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { centreOf, centreOut, cross, type Spot, slackeningOrder } from '../../../src/core/fastening/order';

/** Positions 1..n clockwise as drawn, 1 at the top. */
const circle = (count: number): readonly Spot[] =>
  Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count - Math.PI / 2;
    return { number: i + 1, at: { x: 100 * Math.cos(angle), y: 100 * Math.sin(angle) } };
  });

/** A head with two rows of bolts, numbered along the upper row and back along the lower. */
const head = (perRow: number): readonly Spot[] =>
  Array.from({ length: 2 * perRow }, (_, i) => {
    const column = i < perRow ? i : 2 * perRow - 1 - i;
    return { number: i + 1, at: { x: 95 * column, y: i < perRow ? 0 : 80 } };
  });

const spots = fc
  .uniqueArray(fc.record({ x: fc.integer({ min: -600, max: 600 }), y: fc.integer({ min: -200, max: 200 }) }), {
    minLength: 1,
    maxLength: 24,
    selector: ({ x, y }) => `${x} ${y}`,
  })
  .map((places): readonly Spot[] => places.map((at, i) => ({ number: i + 1, at })));

const sorted = (numbers: readonly number[]) => numbers.toSorted((a, b) => a - b);

describe('centre-out', () => {
  test('an order names every fastener once, and the distance from the centre never falls', () => {
    fc.assert(
      fc.property(spots, (pattern) => {
        const order = centreOut(pattern);
        expect(sorted(order)).toEqual(pattern.map((spot) => spot.number));
        const centre = centreOf(pattern);
        const byNumber = new Map(pattern.map((spot) => [spot.number, spot.at]));
        const distances = order.map((number) => {
          const at = byNumber.get(number);
          return at ? Math.hypot(at.x - centre.x, at.y - centre.y) : Number.NaN;
        });
        for (const [i, distance] of distances.entries())
          expect(distance).toBeGreaterThan((distances[i - 1] ?? 0) - 0.11);
      }),
    );
  });

  test('does not depend on the order the fasteners are listed in', () => {
    fc.assert(
      fc.property(spots, (pattern) => {
        expect(centreOut(pattern.toReversed())).toEqual(centreOut(pattern));
      }),
    );
  });

  test('a two-row head begins in the middle and changes ends', () => {
    expect(centreOut(head(4))).toEqual([2, 6, 7, 3, 8, 4, 1, 5]);
    expect(centreOut(head(5))).toEqual([3, 8, 2, 7, 9, 4, 10, 5, 1, 6]);
  });

  test('nothing to tighten is an empty order', () => {
    expect(centreOut([])).toEqual([]);
  });
});

describe('cross pattern', () => {
  // The tables are from memory, so these rows are compared as recalled, not as published.
  test.each([
    [4, [1, 3, 2, 4]],
    [8, [1, 5, 3, 7, 2, 6, 4, 8]],
    [12, [1, 7, 4, 10, 2, 8, 5, 11, 3, 9, 6, 12]],
    [16, [1, 9, 5, 13, 3, 11, 7, 15, 2, 10, 6, 14, 4, 12, 8, 16]],
    [20, [1, 11, 6, 16, 3, 13, 8, 18, 5, 15, 10, 20, 2, 12, 7, 17, 4, 14, 9, 19]],
    [24, [1, 13, 7, 19, 4, 16, 10, 22, 2, 14, 8, 20, 5, 17, 11, 23, 3, 15, 9, 21, 6, 18, 12, 24]],
  ])('%d fasteners, ASME PCC-1 from memory', (count, order) => {
    expect(cross(circle(count))).toEqual(order);
  });

  test.each([
    [3, [1, 2, 3]],
    [5, [1, 3, 5, 2, 4]],
    [6, [1, 4, 2, 5, 3, 6]],
    [10, [1, 6, 3, 8, 5, 10, 2, 7, 4, 9]],
  ])('%d fasteners, common practice', (count, order) => {
    expect(cross(circle(count))).toEqual(order);
  });

  test('each group of four is a place, its opposite and the two at right angles', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 12 }), (quarter) => {
        const order = cross(circle(4 * quarter));
        expect(sorted(order)).toEqual(circle(4 * quarter).map((spot) => spot.number));
        for (let i = 0; i < order.length; i += 4) {
          const a = order[i] ?? Number.NaN;
          expect(order.slice(i, i + 4)).toEqual([a, a + 2 * quarter, a + quarter, a + 3 * quarter]);
        }
      }),
    );
  });

  test('any count is a permutation, and an even one goes to the opposite every second time', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 31 }), (count) => {
        const order = cross(circle(count));
        expect(sorted(order)).toEqual(circle(count).map((spot) => spot.number));
        if (count % 2 === 0)
          for (let i = 0; i < count; i += 2) expect((order[i + 1] ?? 0) - (order[i] ?? 0)).toBe(count / 2);
      }),
    );
  });

  test('goes by place: numbers that already run in the order of tightening come out as they are', () => {
    const places = cross(circle(8));
    const numbered = circle(8).map((spot) => ({ ...spot, number: places.indexOf(spot.number) + 1 }));
    expect(cross(numbered)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
  });
});

test('slackening is tightening backwards', () => {
  expect(slackeningOrder([3, 8, 2, 7])).toEqual([7, 2, 8, 3]);
  fc.assert(
    fc.property(spots, (pattern) => {
      const order = centreOut(pattern);
      expect(slackeningOrder(slackeningOrder(order))).toEqual(order);
      expect(slackeningOrder(order).at(-1)).toBe(order[0]);
    }),
  );
});
