import { describe, expect, test } from 'vitest';
import { degrees, megapascals, millimetres, squareMillimetres } from '../../../src/core/fastening/quantity';
import { boltStiffness, newtonsPerMillimetre, turnEffect, turnStretch } from '../../../src/core/fastening/turn-preload';

const bolt = boltStiffness(megapascals(205_000), squareMillimetres(61.2), millimetres(90));
const kb = bolt.ok ? bolt.value : newtonsPerMillimetre(0);
const quarter = (joint: number) => turnEffect(millimetres(1.25), degrees(90), kb, newtonsPerMillimetre(joint));

describe('a quarter turn on M10x1.25 with 90 mm of grip (derived from the textbook form)', () => {
  test('the bolt’s stiffness is 139.4 kN/mm', () => {
    expect(kb / 1000).toBeCloseTo(139.4, 1);
  });

  test('a joint four times as stiff: 0.3125 mm of thread, 34.85 kN if nothing yields', () => {
    const effect = quarter(4 * kb);
    expect(effect.ok && effect.value.displacement).toBeCloseTo(0.3125, 6);
    expect(effect.ok && effect.value.rise / 1000).toBeCloseTo(34.85, 2);
    expect(effect.ok && effect.value.stretch).toBeCloseTo(0.25, 6);
  });

  test('a stiffer joint leaves more of the turn to the bolt', () => {
    const stretches = [1, 2, 4, 8, 1000].map((times) => {
      const effect = quarter(times * kb);
      return effect.ok ? effect.value.stretch : Number.NaN;
    });
    expect(stretches).toEqual(stretches.toSorted((a, b) => a - b));
    expect(stretches.at(-1)).toBeCloseTo(0.3125, 2);
  });
});

test('the stretch alone needs only how stiff the joint is to the bolt', () => {
  for (const times of [1, 4, 8]) {
    const effect = quarter(times * kb);
    const alone = turnStretch(millimetres(1.25), degrees(90), times);
    expect(alone.ok && alone.value.stretch).toBeCloseTo(effect.ok ? effect.value.stretch : Number.NaN, 9);
  }
});

test('no grip and no stiffness are refused', () => {
  expect(boltStiffness(megapascals(205_000), squareMillimetres(61.2), millimetres(0))).toEqual({
    ok: false,
    error: { code: 'not-positive', name: 'L', given: 0 },
  });
  expect(quarter(0)).toEqual({ ok: false, error: { code: 'not-positive', name: 'kj', given: 0 } });
});
