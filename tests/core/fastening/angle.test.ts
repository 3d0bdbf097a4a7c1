import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { angleSum, angleThatCounts, angleVerdict, nextSwing, type Turn } from '../../../src/core/fastening/angle';
import { degrees } from '../../../src/core/fastening/quantity';

const turn = (middle: number, slack: number): Turn => ({
  kind: 'angle',
  degrees: degrees(middle),
  window: { least: middle - slack, most: middle + slack },
});

describe('sums of angles', () => {
  test('45 + 45 + 45 + 30 is 165, as printed (US Army TM 10-3930-669-20, table E-1)', () => {
    expect(angleSum([45, 45, 45, 30].map(degrees))).toBe(165);
    expect(angleSum([45, 45].map(degrees))).toBe(90);
    expect(angleSum([])).toBe(0);
  });

  test.each<[string, readonly Turn[], number, number, number]>([
    [
      'torque, 85-95, slacken, torque, 85-95, 85-95: 170-190 counts, not 255-285',
      [{ kind: 'torque' }, turn(90, 5), { kind: 'slacken' }, { kind: 'torque' }, turn(90, 5), turn(90, 5)],
      180,
      170,
      190,
    ],
    [
      'torque, slacken, torque, 60, 60',
      [{ kind: 'torque' }, { kind: 'slacken' }, { kind: 'torque' }, turn(60, 5), turn(60, 5)],
      120,
      110,
      130,
    ],
    ['no slackening', [{ kind: 'torque' }, turn(90, 5), turn(90, 5)], 180, 170, 190],
    ['slackened last', [turn(90, 5), { kind: 'slacken' }], 0, 0, 0],
  ])('%s', (_, turns, sum, least, most) => {
    expect(angleThatCounts(turns)).toEqual({ degrees: sum, window: { least, most } });
  });
});

describe('verdict against a window of 90-94 (common practice)', () => {
  const window = { least: 90, most: 94 };
  test.each([
    [88, { kind: 'under', least: 2, most: 6 }],
    [89.9, { kind: 'under' }],
    [90, { kind: 'within' }],
    [92, { kind: 'within' }],
    [94, { kind: 'within' }],
    [96, { kind: 'over', by: 2 }],
  ])('%d', (turned, verdict) => {
    expect(angleVerdict(degrees(turned), window)).toMatchObject(verdict);
  });
});

describe('the next swing', () => {
  const swing = (target: number, turned: number, room: number) =>
    nextSwing(degrees(target), degrees(turned), degrees(room));

  test.each([
    ['all at once', 90, 0, 180, { degrees: 90, left: 1, markAt: 90, turned: 90 }],
    ['two halves where the bay is tight', 90, 0, 45, { degrees: 45, left: 2, markAt: 45, turned: 45 }],
    ['the second half', 90, 45, 45, { degrees: 45, left: 1, markAt: 90, turned: 90 }],
    ['even swings rather than one long and one short', 90, 0, 60, { degrees: 45, left: 2, markAt: 45, turned: 45 }],
    ['what is left after an odd swing', 90, 37, 60, { degrees: 53, left: 1, markAt: 90, turned: 90 }],
    ['a full turn brings the mark home', 360, 270, 90, { degrees: 90, left: 1, markAt: 0, turned: 360 }],
  ])('%s', (_, target, turned, room, expected) => {
    expect(swing(target, turned, room)).toEqual({ ok: true, value: expected });
  });

  test('nothing is left', () => {
    expect(swing(90, 90, 45)).toEqual({ ok: true, value: null });
    expect(swing(90, 96, 45)).toEqual({ ok: true, value: null });
  });

  test('no room and no target are refused', () => {
    expect(swing(90, 0, 0)).toEqual({ ok: false, error: { code: 'not-positive', name: 'room', given: 0 } });
    expect(swing(-90, 0, 45)).toEqual({ ok: false, error: { code: 'not-positive', name: 'target', given: -90 } });
  });

  test('following the swings reaches the target in the number promised, none longer than the room', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 720 }), fc.integer({ min: 10, max: 360 }), (target, room) => {
        const first = swing(target, 0, room);
        const promised = first.ok && first.value ? first.value.left : 0;
        let turned = 0;
        let count = 0;
        for (let s = first; s.ok && s.value; s = swing(target, turned, room)) {
          expect(s.value.degrees).toBeLessThanOrEqual(room * (1 + 1e-6));
          turned = s.value.turned;
          if (++count > promised) break;
        }
        expect(count).toBe(promised);
        expect(turned).toBeCloseTo(target, 9);
      }),
    );
  });
});
