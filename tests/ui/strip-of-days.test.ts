import { describe, expect, test } from 'vitest';
import type { TimelineLine } from '../../src/core/view/timeline-line';
import { seqAt, stripOf } from '../../src/ui/record/strip-of-days';
import { say } from '../shell/fakes';

const line = (seq: number, day: number, time: string, kind: TimelineLine['kind'], undone = false): TimelineLine => ({
  seq,
  at: Date.parse(`2031-03-0${day}T${time}Z`),
  kind,
  text: '',
  undone,
  phase: '',
  bolt: null,
  clip: null,
});

const LINES = [
  line(1, 4, '08:10', 'job'),
  line(2, 4, '08:16', 'done'),
  line(3, 4, '08:29', 'measured'),
  line(4, 4, '08:29', 'heard'),
  line(5, 4, '16:50', 'done', true),
  line(6, 5, '07:40', 'done'),
  line(7, 5, '10:00', 'fault'),
];
const strip = stripOf(LINES, say, 'UTC');
const [first, second] = strip.days;

describe('the days at a glance', () => {
  test('are drawn from the earliest hour of any to the latest', () => {
    expect([strip.fromHour, strip.toHour]).toEqual([7, 17]);
  });

  test.each([
    { time: '19:20', hours: [14, 20] },
    { time: '02:00', hours: [0, 6] },
    { time: '23:59', hours: [18, 24] },
  ])('cover six hours at least: $time alone', ({ time, hours }) => {
    const { fromHour, toHour } = stripOf([line(1, 4, time, 'done')], say, 'UTC');
    expect([fromHour, toHour]).toEqual(hours);
  });

  test('count what was done and still stands, and the quarters with trouble; talk counts as neither', () => {
    expect(first).toMatchObject({ day: 'Tuesday 4 March 2031', from: '08:10', to: '16:50', done: 2, trouble: 1 });
    expect(second).toMatchObject({ day: 'Wednesday 5 March 2031', from: '07:40', to: '10:00', done: 1, trouble: 1 });
    expect(strip.most).toBe(2);
  });

  test('put what happened into its quarter of an hour, where the zone has it', () => {
    expect(first?.quarters.map(({ index, done }) => [index, done])).toEqual([
      [32, 0],
      [33, 2],
      [67, 0],
    ]);
    // Kathmandu is five hours and three quarters ahead of UTC.
    expect(stripOf(LINES, say, 'Asia/Kathmandu').days[0]?.quarters[0]?.index).toBe(32 + 23);
  });

  test.each([
    { at: 0, seq: 1, where: 'before anything: the first line' },
    { at: (33 - 28) / 40 + 0.01, seq: 2, where: 'in a quarter: its first line' },
    { at: 0.5, seq: 5, where: 'in a gap: what came after it' },
    { at: 1, seq: 5, where: 'after everything: the last quarter' },
  ])('a tap $where', ({ at, seq }) => {
    expect(first && seqAt(strip, first, at)).toBe(seq);
  });

  test('of a log without a line there is nothing to draw', () => {
    expect(stripOf([], say, 'UTC').days).toEqual([]);
  });
});
