import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { netTime, type Stretch } from '../../../src/core/measuring/labour-time';

const hours = (from: number, to: number): Stretch => ({ from: from * 3_600_000, to: to * 3_600_000 });

describe('time worked is work less pauses', () => {
  test.each<[string, readonly Stretch[], readonly Stretch[], number]>([
    ['no pause', [hours(8, 12)], [], 4],
    ['a break', [hours(8, 12)], [hours(10, 10.25)], 3.75],
    ['two days and a night', [hours(8, 17), hours(32, 36)], [hours(12, 13)], 12],
    ['a pause that runs past knocking off', [hours(8, 12)], [hours(11, 20)], 3],
    ['pauses inside pauses count once', [hours(8, 12)], [hours(9, 11), hours(10, 10.5)], 2],
    ['a pause outside work takes nothing off', [hours(8, 12)], [hours(13, 14)], 4],
    ['a pause over everything', [hours(8, 12)], [hours(0, 24)], 0],
    ['work noted twice counts once', [hours(8, 12), hours(9, 13)], [], 5],
    ['a stretch that ends before it starts is nothing', [hours(12, 8)], [], 0],
    ['nothing', [], [hours(1, 2)], 0],
  ])('%s', (_, work, pauses, expected) => {
    expect(netTime(work, pauses)).toBe(expected * 3_600_000);
  });

  test('agrees with counting minute by minute', () => {
    const stretch = fc
      .tuple(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 60 }))
      .map(([a, b]): Stretch => ({ from: Math.min(a, b), to: Math.max(a, b) }));
    const several = fc.array(stretch, { maxLength: 6 });
    fc.assert(
      fc.property(several, several, (work, pauses) => {
        const inside = (minute: number, list: readonly Stretch[]) =>
          list.some((s) => s.from <= minute && minute < s.to);
        const minutes = Array.from({ length: 61 }, (_, i) => i);
        expect(netTime(work, pauses)).toBe(minutes.filter((m) => inside(m, work) && !inside(m, pauses)).length);
      }),
    );
  });
});
