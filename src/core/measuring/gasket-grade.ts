import { type Millimetres, millimetres } from '../fastening/quantity';
import { sideOf, steady } from '../fastening/steady';
import type { Working } from '../fastening/working';
import { fail, ok, type Result } from '../result';

/** One gasket grade: for which piston heights, both ends included as printed, and how thick it is. All in mm. */
export type GasketGrade = {
  readonly grade: string;
  readonly least: Millimetres;
  readonly most: Millimetres;
  readonly thickness: Millimetres;
};

/** Two readings of one piston's height over the block face, in mm; negative below it. */
export type PistonHeight = { readonly cylinder: number; readonly readings: readonly [Millimetres, Millimetres] };

export type GradeChoice = {
  readonly grade: GasketGrade;
  /** The cylinder whose average decided, and that average. */
  readonly decidedBy: number;
  readonly height: Millimetres;
};

export type GradeError =
  | { readonly code: 'no-readings' }
  /** The height lies on a border that two grades share, or in a crack between two: the person decides, not the program. */
  | {
      readonly code: 'on-a-border';
      readonly cylinder: number;
      readonly height: Millimetres;
      readonly could: readonly GasketGrade[];
    }
  | { readonly code: 'outside-grades'; readonly cylinder: number; readonly height: Millimetres };

/**
 * The gasket grade for a block: average the two readings of each piston, let the largest average decide, look it up.
 * Errors: `no-readings`, `on-a-border`, `outside-grades`. Source: common practice; the grades are the maker's.
 */
export function gasketGrade(
  pistons: readonly PistonHeight[],
  grades: readonly GasketGrade[],
): Result<GradeChoice, GradeError> {
  const averages = pistons.map(({ cylinder, readings: [a, b] }) => ({
    cylinder,
    height: steady(millimetres((a + b) / 2)),
  }));
  const [first, ...rest] = averages;
  if (!first) return fail({ code: 'no-readings' });
  const { cylinder, height } = rest.reduce((top, one) => (one.height > top.height ? one : top), first);
  const [grade, ...others] = grades.filter((one) => sideOf(height, one) === 'within');
  if (grade && others.length === 0) return ok({ grade, decidedBy: cylinder, height });
  const could = grade ? [grade, ...others] : aroundCrack(height, grades);
  return could.length > 1
    ? fail({ code: 'on-a-border', cylinder, height, could })
    : fail({ code: 'outside-grades', cylinder, height });
}

/** How the height of one piston was reached from its two readings, in mm. */
export const gradeWorking = (a: Millimetres, b: Millimetres): Working => ({
  formula: 'mean-height',
  inputs: [
    { name: 'a', value: a, unit: 'mm' },
    { name: 'b', value: b, unit: 'mm' },
  ],
  result: { name: 'height', value: (a + b) / 2, unit: 'mm' },
});

/** The grades just below and just above a height that none of them covers. */
function aroundCrack(height: Millimetres, grades: readonly GasketGrade[]): readonly GasketGrade[] {
  const below = grades.filter((one) => one.most < height).toSorted((a, b) => b.most - a.most)[0];
  const above = grades.filter((one) => one.least > height).toSorted((a, b) => a.least - b.least)[0];
  return below && above ? [below, above] : [];
}
