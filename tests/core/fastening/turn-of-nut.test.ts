import { describe, expect, test } from 'vitest';
import { base, millimetres } from '../../../src/core/fastening/quantity';
import { RCSC_TURNS, turnFor } from '../../../src/core/fastening/turn-of-nut';

describe('3/4 in bolts, both faces square (RCSC Specification, table 8.2; tolerances from memory)', () => {
  test.each([
    [2, 120, 90, 150],
    [3, 120, 90, 150],
    [3.01, 180, 150, 210],
    [6, 180, 150, 210],
    [6.5, 240, 195, 285],
    [9, 240, 195, 285],
  ])('%d in long: %d degrees', (length, turn, least, most) => {
    const result = turnFor(base<'length'>(length, 'in'), base<'length'>(0.75, 'in'), RCSC_TURNS);
    expect(result).toEqual({ ok: true, value: { turn, window: { least, most } } });
  });

  test('a bolt longer than the table is for testing, not for guessing', () => {
    const result = turnFor(base<'length'>(9.1, 'in'), base<'length'>(0.75, 'in'), RCSC_TURNS);
    expect(result).toMatchObject({ ok: false, error: { code: 'longer-than-table', most: 12 } });
  });

  test('a bolt of no diameter is refused', () => {
    expect(turnFor(millimetres(50), millimetres(0), RCSC_TURNS)).toMatchObject({ ok: false, error: { name: 'D' } });
  });
});
