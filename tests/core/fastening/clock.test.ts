import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { angleAt, between, clockAt, markVerdict } from '../../../src/core/fastening/clock';
import { degrees } from '../../../src/core/fastening/quantity';

describe('clock positions', () => {
  test.each([
    [0, 12],
    [90, 3],
    [180, 6],
    [270, 9],
    [360, 12],
    [450, 3],
    [-90, 9],
    [135, 4.5],
    [165, 5.5],
    [15, 12.5],
    [345, 11.5],
    [352.6, 12],
    [7, 12],
  ])('%d degrees is %d o’clock', (angle, clock) => {
    expect(clockAt(degrees(angle))).toBe(clock);
  });

  test('every half hour is read back as itself', () => {
    for (let clock = 1; clock < 13; clock += 0.5) expect(clockAt(angleAt(clock))).toBe(clock);
  });

  test('the position named is never more than a quarter of an hour off', () => {
    fc.assert(
      fc.property(fc.double({ min: -720, max: 720, noNaN: true }), (angle) => {
        expect(between(degrees(angle), angleAt(clockAt(degrees(angle))))).toBeLessThanOrEqual(7.5 + 1e-9);
      }),
    );
  });
});

describe('what a mark proves', () => {
  const judge = (clock: number, before: number, after: number) =>
    markVerdict(angleAt(clock), degrees(before), degrees(after), degrees(15));

  test.each([
    ['at the place this pass leaves it', 3, 0, 90, { kind: 'turned' }],
    ['still where the pass found it', 12, 0, 90, { kind: 'not-turned' }],
    ['half way', 1.5, 0, 90, { kind: 'elsewhere', off: 45 }],
    ['second quarter turn: the mark of the first proves nothing of the second', 3, 90, 180, { kind: 'not-turned' }],
    ['second quarter turn done', 6, 90, 180, { kind: 'turned' }],
    ['the fourth quarter turn brings the mark home', 12, 270, 360, { kind: 'turned' }],
    ['too far', 5, 0, 90, { kind: 'elsewhere', off: 60 }],
    ['a full turn in one pass leaves no trace', 12, 0, 360, { kind: 'cannot-tell' }],
    ['a turn too small to tell', 1, 0, 30, { kind: 'cannot-tell' }],
  ])('%s', (_, clock, before, after, verdict) => {
    expect(judge(clock, before, after)).toEqual(verdict);
  });
});
