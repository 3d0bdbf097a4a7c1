import { describe, expect, test } from 'vitest';
import { newtonMetres } from '../../../src/core/fastening/quantity';
import {
  calibrationOf,
  deviationOf,
  doubtsAbout,
  permissibleDeviation,
  usableRange,
  type Wrench,
} from '../../../src/core/fastening/wrench';

const wrench: Wrench = {
  id: 'w1',
  say: 'the half inch',
  unit: 'lbf·ft',
  least: 10,
  most: 150,
  graduation: 1,
  calibrationDue: '2026-06-30',
  dropped: false,
};

describe('permissible deviation goes by the maximum of the tool (ISO 6789, as a tool handbook sums it up)', () => {
  test.each([
    [5, 6],
    [10, 6],
    [10.01, 4],
    [200, 4],
  ])('a tool up to %d N·m: %d %%', (most, percent) => {
    expect(permissibleDeviation(newtonMetres(most))).toBe(percent);
  });

  test('a tool marked in inch-pounds is judged in newton metres', () => {
    expect(deviationOf({ ...wrench, unit: 'lbf·in', most: 80 })).toBe(6);
    expect(deviationOf({ ...wrench, unit: 'lbf·in', most: 100 })).toBe(4);
  });
});

describe('doubts about a wrench (FAA AC 43.13-1B, 7-40)', () => {
  test.each<[string, Partial<Wrench>, string, readonly string[]]>([
    ['in date', {}, '2026-06-01', []],
    ['on its last day', {}, '2026-06-30', []],
    ['a day late', {}, '2026-07-01', ['calibration-overdue']],
    ['dropped', { dropped: true }, '2026-06-01', ['dropped']],
    ['dropped and late', { dropped: true }, '2027-01-01', ['dropped', 'calibration-overdue']],
  ])('%s', (_, change, today, codes) => {
    expect(doubtsAbout({ ...wrench, ...change }, today).map((doubt) => doubt.code)).toEqual(codes);
  });

  test('no due date is a doubt of its own', () => {
    const { calibrationDue: _, ...undated } = wrench;
    expect(doubtsAbout(undated, '2026-06-01')).toEqual([{ code: 'calibration-unknown' }]);
  });
});

describe('the calibration of a wrench, due on the last of June', () => {
  test.each([
    ['2026-05-30', 'good'],
    ['2026-05-31', 'soon'],
    ['2026-06-30', 'soon'],
    ['2026-07-01', 'overdue'],
  ])('on %s is %s', (today, stands) => {
    expect(calibrationOf(wrench, today)).toBe(stands);
  });

  test('is not known where no day was entered', () => {
    const { calibrationDue: _, ...undated } = wrench;
    expect(calibrationOf(undated, '2026-06-01')).toBe('unknown');
  });
});

test('the usable range begins at a fifth of full scale or at the lowest mark, whichever is higher', () => {
  expect(usableRange(wrench)).toEqual({ least: 30, most: 150 });
  expect(usableRange({ ...wrench, least: 40 })).toEqual({ least: 40, most: 150 });
});
