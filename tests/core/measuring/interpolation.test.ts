import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { between, interpolate, type TableRow } from '../../../src/core/measuring/interpolation';

test('between 30 % at -15 and 40 % at -23, -20 lies at 36.25 % (published ethanol example, Engineering ToolBox)', () => {
  expect(between([-15, 30], [-23, 40], -20)).toBeCloseTo(36.25, 10);
});

describe('a table answers between its rows and nowhere else', () => {
  const rows: readonly TableRow[] = [
    [0, 0],
    [10, 5],
    [20, 25],
  ];
  test.each([
    [0, 0],
    [5, 2.5],
    [10, 5],
    [15, 15],
    [20, 25],
  ])('at %d: %d', (x, y) => {
    expect(interpolate(rows, x)).toEqual({ ok: true, value: y });
  });

  test.each([-0.1, 20.1, Number.NaN])('not at %d', (given) => {
    expect(interpolate(rows, given)).toEqual({
      ok: false,
      error: { code: 'outside-table', given, least: 0, most: 20 },
    });
  });

  test('one row is no table', () => {
    expect(interpolate([[0, 0]], 0)).toEqual({ ok: false, error: { code: 'table-too-short', rows: 1 } });
    expect(interpolate([], 0)).toEqual({ ok: false, error: { code: 'table-too-short', rows: 0 } });
  });

  test('answers lie between the neighbours of the row', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 20, noNaN: true }), (x) => {
        const found = interpolate(rows, x);
        const [low, high] = x <= 10 ? [0, 5] : [5, 25];
        expect(found.ok && found.value).toBeGreaterThanOrEqual(low);
        expect(found.ok && found.value).toBeLessThanOrEqual(high);
      }),
    );
  });
});
