import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { celsius, percent } from '../../../src/core/fastening/quantity';
import { COOLANT_TABLES, freezingPoint, shareFor } from '../../../src/core/measuring/coolant-table';

const tableOf = (name: string) => {
  const table = COOLANT_TABLES.find((one) => one.name === name);
  if (!table) throw new Error(`no table ${name}`);
  return table;
};
const HANDBOOK = tableOf('ethylene-glycol-handbook');
const REPRINTED = tableOf('ethylene-glycol-reprinted');
const LANGE = tableOf('propylene-glycol-lange');

describe('freezing points', () => {
  test.each([
    [HANDBOOK, 50, -35, 'an engine handbook'],
    [HANDBOOK, 59, -50, 'an engine handbook'],
    [HANDBOOK, 100, -13, 'an engine handbook'],
    [HANDBOOK, 52, -37.5, 'derived: half way between two rows'],
    [REPRINTED, 30, -13.7, 'from memory'],
    [REPRINTED, 5, -1.7, 'derived: half way between two rows'],
    [LANGE, 50, -33.3, "Lange's Handbook, 15th ed., table 5.13"],
  ])('$name at %d %%: %d °C', (table, share, temperature) => {
    const found = freezingPoint(table, percent(share));
    expect(found.ok && found.value).toBeCloseTo(temperature, 9);
  });

  test('half and half freezes at about -37 °C whichever source is asked (published: -37, -34)', () => {
    for (const table of [HANDBOOK, REPRINTED]) {
      const found = freezingPoint(table, percent(50));
      expect(found.ok && Math.abs(found.value + 36)).toBeLessThan(2.1);
    }
  });

  test('past its coldest row more of it protects less', () => {
    const at = (share: number) => {
      const found = freezingPoint(HANDBOOK, percent(share));
      return found.ok ? found.value : Number.NaN;
    };
    expect(at(80)).toBeGreaterThan(at(59));
    expect(at(100)).toBeGreaterThan(at(80));
  });

  test('a table says nothing beyond its ends', () => {
    expect(freezingPoint(LANGE, percent(60))).toEqual({
      ok: false,
      error: { code: 'outside-table', given: 60, least: 5, most: 50 },
    });
  });
});

describe('the smallest share that does not freeze', () => {
  test.each([
    [HANDBOOK, -35, 50, 'an engine handbook'],
    [HANDBOOK, -30, 47.8, 'an engine handbook: 85 % freezes at -30 too'],
    [HANDBOOK, -13, 31.04, 'derived: not the 100 % that also reads -13'],
    [HANDBOOK, -50, 59, 'an engine handbook'],
    [LANGE, -20.6, 40, "Lange's Handbook, 15th ed., table 5.13"],
    [REPRINTED, -25, 41.128, 'derived'],
  ])('$name for %d °C: %d %%', (table, wanted, share) => {
    const found = shareFor(table, celsius(wanted));
    expect(found.ok && found.value).toBeCloseTo(share, 3);
  });

  test.each([
    [HANDBOOK, -51, { code: 'colder-than-table', wanted: -51, coldest: -50 }],
    [HANDBOOK, -5, { code: 'warmer-than-table', wanted: -5, warmest: -10 }],
    [HANDBOOK, Number.NaN, { code: 'colder-than-table', wanted: Number.NaN, coldest: -50 }],
  ])('$name cannot say for %d °C', (table, wanted, error) => {
    expect(shareFor(table, celsius(wanted))).toEqual({ ok: false, error });
  });

  test('the share found freezes at the temperature asked for, and no smaller one is safe', () => {
    const cases = fc.constantFrom(...COOLANT_TABLES).chain((table) => {
      const temperatures = table.rows.map(([, t]) => t);
      const range = { min: Math.min(...temperatures), max: temperatures[0] ?? 0, noNaN: true };
      return fc.tuple(fc.constant(table), fc.double(range));
    });
    fc.assert(
      fc.property(cases, ([table, wanted]) => {
        const share = shareFor(table, celsius(wanted));
        if (!share.ok) throw new Error(share.error.code);
        const freezes = freezingPoint(table, share.value);
        expect(freezes.ok && freezes.value).toBeCloseTo(wanted, 6);
        const weaker = freezingPoint(table, percent(share.value - 0.01));
        if (weaker.ok) expect(weaker.value).toBeGreaterThan(wanted);
      }),
    );
  });
});

test('every table says volume or mass and rises row by row', () => {
  for (const { by, rows } of COOLANT_TABLES) {
    expect(['volume', 'mass']).toContain(by);
    for (const [i, [share]] of rows.entries()) expect(share).toBeGreaterThan(rows[i - 1]?.[0] ?? -1);
  }
});
