import { describe, expect, test } from 'vitest';
import { sideOf, steady } from '../../../src/core/fastening/steady';

test.each([
  [0.1 + 0.2, 0.3],
  [0.3 - 0.1 - 0.2, 0],
  [29.999999999999996, 30],
  [-1e-12, 0],
])('%d is %d', (sum, value) => {
  expect(steady(sum)).toBe(value);
});

describe('both ends of a window are within it', () => {
  test.each([
    [0.05, 'within'],
    [0.1 + 0.2, 'within'],
    [0.049, 'under'],
    [0.301, 'over'],
    [Number.NaN, 'over'],
    [Number.POSITIVE_INFINITY, 'over'],
    [Number.NEGATIVE_INFINITY, 'under'],
  ])('%d is %s', (value, side) => {
    expect(sideOf(value, { least: 0.05, most: 0.3 })).toBe(side);
  });
});
