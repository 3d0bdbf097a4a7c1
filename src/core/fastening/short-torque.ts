import { fail, ok, type Result } from '../result';
import { type NotPositive, notPositive } from './positive';
import { type Millimetres, type NewtonMetres, type Newtons, newtonMetres, newtons } from './quantity';
import type { Working } from './working';

/** A torque coefficient K is never one number: sources disagree, so a condition holds the range they span. */
export type TorqueCoefficient = {
  readonly condition: string;
  readonly least: number;
  readonly most: number;
};

/** Coefficients to show how much the condition of a thread matters. Never a reason to change a printed torque. */
export const TORQUE_COEFFICIENTS: readonly TorqueCoefficient[] = [
  // Shigley, quoted second-hand
  { condition: 'plain-black', least: 0.3, most: 0.3 },
  // Shigley 0.20; supplier guide 0.22; Bickford and Nassar 0.295 dry
  { condition: 'zinc-plated', least: 0.2, most: 0.295 },
  // Shigley 0.16; Bickford and Nassar 0.20 dry
  { condition: 'cadmium-plated', least: 0.16, most: 0.2 },
  // Shigley, table 8-15, from memory
  { condition: 'oiled', least: 0.18, most: 0.18 },
  { condition: 'anti-seize', least: 0.12, most: 0.12 },
  // Supplier guide
  { condition: 'waxed', least: 0.1, most: 0.1 },
];

/** Two ends of an answer, each with its sum. */
export type Span<T> = { readonly least: T; readonly most: T; readonly workings: readonly [Working, Working] };

type K = Pick<TorqueCoefficient, 'least' | 'most'>;

/**
 * The torque for a tension F in N on a diameter D in mm, in N·m: T = K D F, for both ends of K (usually 0.1 to 0.3).
 * A rough estimate, never the authority for a pass. Error: `not-positive` for K, D or F. Source: textbook short form.
 */
export function torqueFor(tension: Newtons, diameter: Millimetres, k: K): Result<Span<NewtonMetres>, NotPositive> {
  const bad = notPositive({ K: k.least, D: diameter, F: tension });
  if (bad) return fail(bad);
  const at = (coefficient: number) => newtonMetres((coefficient * diameter * tension) / 1000);
  const working = (coefficient: number): Working => ({
    formula: 'torque-short',
    inputs: [...inputs(coefficient, diameter), { name: 'F', value: tension, unit: 'N' }],
    result: { name: 'T', value: at(coefficient), unit: 'N·m' },
  });
  return ok({ least: at(k.least), most: at(k.most), workings: [working(k.least), working(k.most)] });
}

/**
 * The tension a torque T in N·m leaves on a diameter D in mm, in N: F = T / (K D). The larger K gives the lower end.
 * Error and source as `torqueFor`.
 */
export function tensionFrom(torque: NewtonMetres, diameter: Millimetres, k: K): Result<Span<Newtons>, NotPositive> {
  const bad = notPositive({ K: k.least, D: diameter, T: torque });
  if (bad) return fail(bad);
  const at = (coefficient: number) => newtons((1000 * torque) / (coefficient * diameter));
  const working = (coefficient: number): Working => ({
    formula: 'tension-short',
    inputs: [...inputs(coefficient, diameter), { name: 'T', value: torque, unit: 'N·m' }],
    result: { name: 'F', value: at(coefficient), unit: 'N' },
  });
  return ok({ least: at(k.most), most: at(k.least), workings: [working(k.most), working(k.least)] });
}

/**
 * The torque, in N·m, that leaves the same tension after the thread's condition changed: T2 = T1 K2 / K1.
 * For understanding only: a printed torque already names its condition. Error: `not-positive`.
 */
export function torqueAfterChange(
  torque: NewtonMetres,
  from: number,
  to: number,
): Result<{ readonly torque: NewtonMetres; readonly working: Working }, NotPositive> {
  const bad = notPositive({ T1: torque, K1: from, K2: to });
  if (bad) return fail(bad);
  const changed = newtonMetres((torque * to) / from);
  return ok({
    torque: changed,
    working: {
      formula: 'lubricant-change',
      inputs: [
        { name: 'T1', value: torque, unit: 'N·m' },
        { name: 'K1', value: from, unit: 'ratio' },
        { name: 'K2', value: to, unit: 'ratio' },
      ],
      result: { name: 'T2', value: changed, unit: 'N·m' },
    },
  });
}

const inputs = (k: number, diameter: Millimetres): Working['inputs'] => [
  { name: 'K', value: k, unit: 'ratio' },
  { name: 'D', value: diameter, unit: 'mm' },
];
