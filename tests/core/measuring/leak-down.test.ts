import { describe, expect, test } from 'vitest';
import { base } from '../../../src/core/fastening/quantity';
import {
  LEAK_CAUSES,
  type LeakBands,
  leakage,
  leakGrade,
  USUAL_LEAK_BANDS,
} from '../../../src/core/measuring/leak-down';

const psi = (value: number) => base<'pressure'>(value, 'psi');
const leak = (fed: number, held: number) => {
  const result = leakage(psi(fed), psi(held));
  if (!result.ok) throw new Error(result.error.code);
  return result.value.leak;
};
const STRICT: LeakBands = { ...USUAL_LEAK_BANDS, name: 'below-5-percent', bands: [{ below: 5, grade: 'sound' }] };

describe('leakage and its grade', () => {
  test.each([
    [100, 92, 8, 'sound', 'common practice: under 10 % is healthy'],
    [100, 90, 10, 'investigate', 'common practice'],
    [100, 70, 30, 'investigate', 'common practice'],
    [80, 60, 25, 'investigate', 'derived; 25 % as the limit of FAA AC 43.13-1B is from memory'],
    [80, 70, 12.5, 'investigate', 'derived'],
    [80, 80, 0, 'sound', 'derived'],
    [80, 0, 100, 'investigate', 'derived'],
  ])('%d psi in, %d held: %d %%, %s', (fed, held, percent, grade) => {
    expect(leak(fed, held)).toBe(percent);
    expect(leakGrade(leak(fed, held), USUAL_LEAK_BANDS)).toBe(grade);
  });

  test('others draw the line at 5 %: the band names whose it is', () => {
    expect(leakGrade(leak(100, 92), STRICT)).toBe('investigate');
  });
});

test('bubbles in the coolant leave the gasket and the head in question (common practice)', () => {
  expect(LEAK_CAUSES.coolant).toEqual(['head-gasket', 'cracked-head']);
  expect(LEAK_CAUSES['next-cylinder']).toEqual(['head-gasket']);
});

test.each([
  [80, 81, 'held-above-fed'],
  [80, -1, 'held-above-fed'],
  [80, Number.NaN, 'held-above-fed'],
  [0, 0, 'not-positive'],
])('%d in and %d held is refused', (fed, held, code) => {
  expect(leakage(psi(fed), psi(held))).toMatchObject({ ok: false, error: { code } });
});
