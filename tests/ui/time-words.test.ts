import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { clockTime, countdown, dateAndTime, dayWords, hoursAndMinutes } from '../../src/ui/time-words';
import { sayer } from '../../src/ui/words/say';
import { say } from '../shell/fakes';

describe('times as the screens write them', () => {
  test.each([
    [0, '0:00'],
    [-5, '0:00'],
    [1, '0:01'],
    [1000, '0:01'],
    [59_001, '1:00'],
    [760_000, '12:40'],
    [3_600_000, '1:00:00'],
    [9_000_000, '2:30:00'],
  ])('%s ms left read %s', (ms, words) => {
    expect(countdown(ms)).toBe(words);
  });

  test.each([
    [0, { hours: 0, minutes: 0 }],
    [29_999, { hours: 0, minutes: 0 }],
    [30_000, { hours: 0, minutes: 1 }],
    [3_599_999, { hours: 1, minutes: 0 }],
    [7_500_000, { hours: 2, minutes: 5 }],
  ])('%s ms of work', (ms, time) => {
    expect(hoursAndMinutes(ms)).toEqual(time);
  });

  const at = Date.UTC(2031, 2, 4, 23, 5);
  test('a time is of the day and the zone it was in', () => {
    expect(clockTime(at, 'UTC')).toBe('23:05');
    expect(clockTime(at, 'Europe/Berlin')).toBe('00:05');
    expect(dayWords(say, at, 'UTC')).toBe('Tuesday 4 March 2031');
    expect(dayWords(say, at, 'Europe/Berlin')).toBe('Wednesday 5 March 2031');
    expect(dateAndTime(say, at, 'UTC')).toBe('4 March 2031, 23:05');
  });

  test('days and months are named in the language of the screens', () => {
    const french = sayer(parse(readFileSync('grammars/fr/screen.yaml', 'utf8')));
    expect(dayWords(french, at, 'UTC')).toBe('mardi 4 mars 2031');
    expect(dateAndTime(french, at, 'UTC')).toBe('4 mars 2031, 23:05');
  });
});
