import { describe, expect, test } from 'vitest';
import type { Entry } from '../../../src/core/job/entry';
import { carryOver, startTimer, timeLeft } from '../../../src/core/job/timer';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const started = startTimer('cooling', 4 * HOUR, { at: 0, mono: 1000, session: 'a' });

describe('a wait', () => {
  test.each([
    ['runs with the clock that only goes forward', { at: HOUR, mono: 1000 + HOUR, session: 'a' }, 3 * HOUR],
    ['is not shortened by a wall clock put forward', { at: 99 * HOUR, mono: 1000 + HOUR, session: 'a' }, 3 * HOUR],
    ['nor lengthened by one put back', { at: -99 * HOUR, mono: 1000 + HOUR, session: 'a' }, 3 * HOUR],
    ['ends and stays ended', { at: 0, mono: 1000 + 9 * HOUR, session: 'a' }, 0],
    [
      'counts nothing for a session it has not been carried to',
      { at: 9 * HOUR, mono: 9 * HOUR, session: 'b' },
      4 * HOUR,
    ],
  ])('%s', (_, now, left) => {
    expect(timeLeft(started, now)).toBe(left);
  });

  const entry = (at: number, mono: number, session: string): Entry => ({
    kind: 'session-opened',
    at,
    mono,
    session,
    seq: 1,
    who: 'me',
  });

  test.each([
    ['what ran, and the time away', entry(HOUR, 1000 + HOUR, 'a'), entry(3 * HOUR, 5, 'b'), HOUR],
    ['never less for a wall clock put back in between', entry(HOUR, 1000 + HOUR, 'a'), entry(0, 5, 'b'), 3 * HOUR],
    ['all of it when away long enough', entry(HOUR, 1000 + HOUR, 'a'), entry(30 * HOUR, 5, 'b'), 0],
  ])('is carried into a new session: %s', (_, last, opened, left) => {
    const carried = carryOver(started, last, opened);
    expect(timeLeft(carried, opened)).toBe(left);
    expect(timeLeft(carried, { ...opened, mono: opened.mono + MINUTE })).toBe(Math.max(0, left - MINUTE));
  });
});
