import { describe, expect, test } from 'vitest';
import { millimetres } from '../../../src/core/fastening/quantity';
import { type GasketGrade, gasketGrade, type PistonHeight } from '../../../src/core/measuring/gasket-grade';

const grade = (name: string, least: number, most: number, thickness: number): GasketGrade => ({
  grade: name,
  least: millimetres(least),
  most: millimetres(most),
  thickness: millimetres(thickness),
});
const GRADES = [grade('A', 0.758, 0.813, 1.6), grade('B', 0.813, 0.859, 1.65), grade('C', 0.859, 0.914, 1.7)];
const pistons = (...pairs: readonly (readonly [number, number])[]): readonly PistonHeight[] =>
  pairs.map(([a, b], i) => ({ cylinder: i + 1, readings: [millimetres(a), millimetres(b)] }));

describe('the largest average decides (common practice; the grades are one maker’s)', () => {
  test('averages 0.79, 0.84, 0.80, 0.81: cylinder 2, grade B, 1.65 mm', () => {
    const found = gasketGrade(pistons([0.78, 0.8], [0.83, 0.85], [0.8, 0.8], [0.8, 0.82]), GRADES);
    expect(found).toMatchObject({
      ok: true,
      value: { grade: { grade: 'B', thickness: 1.65 }, decidedBy: 2, height: 0.84 },
    });
  });

  test('a single high reading does not decide: its piston’s average does', () => {
    const found = gasketGrade(pistons([0.76, 0.85], [0.81, 0.812]), GRADES);
    expect(found).toMatchObject({ ok: true, value: { grade: { grade: 'A' }, decidedBy: 2, height: 0.811 } });
  });

  test('both ends of all the grades are in', () => {
    expect(gasketGrade(pistons([0.758, 0.758]), GRADES)).toMatchObject({ ok: true, value: { grade: { grade: 'A' } } });
    expect(gasketGrade(pistons([0.914, 0.914]), GRADES)).toMatchObject({ ok: true, value: { grade: { grade: 'C' } } });
  });
});

describe('what the program does not decide', () => {
  test('0.813 belongs to two grades: ask', () => {
    const found = gasketGrade(pistons([0.812, 0.814]), GRADES);
    expect(found).toMatchObject({
      ok: false,
      error: { code: 'on-a-border', cylinder: 1, height: 0.813, could: [{ grade: 'A' }, { grade: 'B' }] },
    });
  });

  test('a height in the crack between two printed ranges: ask', () => {
    const cracked = [grade('1', 0.7, 0.75, 1.1), grade('2', 0.76, 0.8, 1.2)];
    expect(gasketGrade(pistons([0.755, 0.755]), cracked)).toMatchObject({
      ok: false,
      error: { code: 'on-a-border', could: [{ grade: '1' }, { grade: '2' }] },
    });
  });

  test.each([0.7, 1, -0.1])('%d mm is outside every grade: something was measured or machined wrongly', (height) => {
    expect(gasketGrade(pistons([height, height]), GRADES)).toEqual({
      ok: false,
      error: { code: 'outside-grades', cylinder: 1, height },
    });
  });

  test('nothing measured', () => {
    expect(gasketGrade([], GRADES)).toEqual({ ok: false, error: { code: 'no-readings' } });
  });
});
