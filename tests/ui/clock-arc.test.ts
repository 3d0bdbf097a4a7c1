import { describe, expect, test } from 'vitest';
import { atHour, hoursOf, hourWords, sweep } from '../../src/ui/bench/clock-arc';

// A clock face: twelve hours are 360 degrees, clockwise from the top (common practice).
describe('the clock face', () => {
  test.each([
    [12, { x: 0, y: -100 }],
    [3, { x: 100, y: 0 }],
    [6, { x: 0, y: 100 }],
    [9, { x: -100, y: 0 }],
    [1.5, { x: 70.71, y: -70.71 }],
  ])('%s o’clock', (hour, place) => {
    const at = atHour(hour, 100);
    expect(at.x).toBeCloseTo(place.x, 2);
    expect(at.y).toBeCloseTo(place.y, 2);
  });

  test.each([
    [90, 3],
    [45, 1.5],
    [60, 2],
  ])('%s degrees are %s hours', (degrees, hours) => {
    expect(hoursOf(degrees)).toBe(hours);
  });

  test.each([
    [12, '12'],
    [0, '12'],
    [1.5, '1:30'],
    [3, '3'],
    [13, '1'],
    [11.999, '12'],
  ])('hour %s reads %s', (hour, words) => {
    expect(hourWords(hour)).toBe(words);
  });

  test('a slice of a quarter turn ends at three; over half a turn takes the long way round', () => {
    expect(sweep(12, 90, 100)).toBe('M0 0L0 -100A100 100 0 0 1 100 0Z');
    expect(sweep(12, 270, 100)).toBe('M0 0L0 -100A100 100 0 1 1 -100 0Z');
  });

  test('nothing turned is nothing drawn; more than a turn is the whole face', () => {
    expect(sweep(12, 0, 100)).toBe('');
    expect(sweep(12, 400, 100)).toBe(sweep(12, 359.9, 100));
  });
});
