import { fail, ok, type Result } from '../result';
import { type NotPositive, notPositive } from './positive';
import {
  base,
  type Megapascals,
  type Millimetres,
  megapascals,
  type Newtons,
  newtons,
  type Percent,
  percent,
  type SquareMillimetres,
} from './quantity';
import type { Working } from './working';

/** Least strengths of one grade over one band of diameters. */
export type Strength = {
  readonly grade: string;
  /** Diameters up to and including this, in mm, that no narrower band of the same grade covers. */
  readonly upTo: Millimetres;
  readonly tensile: Megapascals;
  readonly yield: Megapascals;
  readonly proof: Megapascals;
};

const iso = (grade: string, upTo: number, tensile: number, yields: number, proof: number): Strength => ({
  grade,
  upTo: base<'length'>(upTo, 'mm'),
  tensile: megapascals(tensile),
  yield: megapascals(yields),
  proof: megapascals(proof),
});

const sae = (grade: string, upTo: number, tensile: number, yields: number, proof: number): Strength => ({
  grade,
  upTo: base<'length'>(upTo, 'in'),
  tensile: stress(tensile),
  yield: stress(yields),
  proof: stress(proof),
});

const stress = (ksi: number): Megapascals => megapascals(base<'pressure'>(ksi, 'ksi') / 1000);

/** ISO 898-1: tensile strength, 0.2 % proof strength and proof stress, MPa; largest diameter 39 mm. */
export const ISO_898_1: readonly Strength[] = [
  iso('8.8', 16, 800, 640, 580),
  iso('8.8', 39, 830, 660, 600),
  iso('10.9', 39, 1040, 940, 830),
  iso('12.9', 39, 1220, 1100, 970),
];

/** SAE J429: tensile, yield and proof, thousands of psi; largest diameter 1 1/2 in. */
export const SAE_J429: readonly Strength[] = [
  sae('grade 5', 1, 120, 92, 85),
  sae('grade 5', 1.5, 105, 81, 74),
  sae('grade 8', 1.5, 150, 130, 120),
];

export type NoStrength = {
  readonly code: 'no-strength-listed';
  readonly grade: string;
  readonly diameter: Millimetres;
};

/** The row of a strength table for a grade and a diameter. Error: `no-strength-listed`. */
export function strengthOf(
  table: readonly Strength[],
  grade: string,
  diameter: Millimetres,
): Result<Strength, NoStrength> {
  const rows = table.filter((row) => row.grade === grade && diameter <= row.upTo);
  const narrowest = rows.reduce<Strength | undefined>(
    (best, row) => (best && best.upTo <= row.upTo ? best : row),
    undefined,
  );
  return narrowest ? ok(narrowest) : fail({ code: 'no-strength-listed', grade, diameter });
}

/**
 * The load a fastener must hold without taking a set, in N: F = Sp * As. Error: `not-positive`.
 * The tables of ISO 898-1 take the area rounded to three figures. Source: ISO 898-1; SAE J429.
 */
export function proofLoad(
  area: SquareMillimetres,
  strength: Strength,
): Result<{ readonly load: Newtons; readonly working: Working }, NotPositive> {
  const bad = notPositive({ As: area, Sp: strength.proof });
  if (bad) return fail(bad);
  const load = newtons(area * strength.proof);
  return ok({
    load,
    working: {
      formula: 'proof-load',
      inputs: [
        { name: 'As', value: area, unit: 'mm2' },
        { name: 'Sp', value: strength.proof, unit: 'MPa' },
      ],
      result: { name: 'F', value: load, unit: 'N' },
    },
  });
}

/** How much of its proof load a fastener carries. Above 100 % it has taken a set, as tightening to yield means it to. */
export const utilisation = (preload: Newtons, proof: Newtons): Percent => percent((100 * preload) / proof);
