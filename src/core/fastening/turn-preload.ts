import { fail, ok, type Result } from '../result';
import { type NotPositive, notPositive } from './positive';
import {
  type Degrees,
  type Megapascals,
  type Millimetres,
  millimetres,
  type Newtons,
  newtons,
  type SquareMillimetres,
} from './quantity';
import type { Working } from './working';

/** How hard a part is to stretch or squeeze: newtons for each millimetre. */
declare const stiffness: unique symbol;
export type Stiffness = number & { readonly [stiffness]: 'N/mm' };
// A brand has no run-time form; this is where a number is given it.
export const newtonsPerMillimetre = (value: number): Stiffness => value as Stiffness;

/** The stiffness of a plain bolt, in N/mm: k = E A / L, with E in MPa, A in mm2, L in mm. Error: `not-positive`. */
export function boltStiffness(
  modulus: Megapascals,
  area: SquareMillimetres,
  grip: Millimetres,
): Result<Stiffness, NotPositive> {
  const bad = notPositive({ E: modulus, A: area, L: grip });
  return bad ? fail(bad) : ok(newtonsPerMillimetre((modulus * area) / grip));
}

export type TurnEffect = {
  /** How far the thread moves: stretch of the bolt and squeeze of the joint together, in mm. */
  readonly displacement: Millimetres;
  /** The bolt's part of it, in mm; the joint takes the rest. */
  readonly stretch: Millimetres;
  /** The rise in preload, in N, if nothing yields. */
  readonly rise: Newtons;
  readonly working: Working;
};

/**
 * What a turn does to a snug joint: u = P angle/360 and dF = u kb kj/(kb + kj); pitch in mm, angle in degrees.
 * Elastic range only: a bolt meant to be turned past yield stops following it, and so its preload cannot be told from
 * the angle. Error: `not-positive`. Source: textbook (Shigley, ch. 8; Bickford), from memory.
 */
export function turnEffect(
  pitch: Millimetres,
  angle: Degrees,
  bolt: Stiffness,
  joint: Stiffness,
): Result<TurnEffect, NotPositive> {
  const bad = notPositive({ P: pitch, angle, kb: bolt, kj: joint });
  if (bad) return fail(bad);
  const displacement = millimetres((pitch * angle) / 360);
  const stretch = millimetres((displacement * joint) / (bolt + joint));
  const rise = newtons(stretch * bolt);
  return ok({
    displacement,
    stretch,
    rise,
    working: {
      formula: 'turn-preload',
      inputs: [
        { name: 'P', value: pitch, unit: 'mm' },
        { name: 'angle', value: angle, unit: 'deg' },
        { name: 'kb', value: bolt, unit: 'N/mm' },
        { name: 'kj', value: joint, unit: 'N/mm' },
      ],
      result: { name: 'dF', value: rise, unit: 'N' },
    },
  });
}

/**
 * How much longer a bolt gets for a turn, in mm: pitch in mm, angle in degrees, and how many times stiffer the joint is
 * than the bolt. Elastic range only. Error: `not-positive`. Source: as `turnEffect`.
 */
export function turnStretch(
  pitch: Millimetres,
  angle: Degrees,
  jointToBolt: number,
): Result<{ readonly stretch: Millimetres; readonly working: Working }, NotPositive> {
  const bad = notPositive({ P: pitch, angle, r: jointToBolt });
  if (bad) return fail(bad);
  const stretch = millimetres(((pitch * angle) / 360) * (jointToBolt / (1 + jointToBolt)));
  return ok({
    stretch,
    working: {
      formula: 'turn-stretch',
      inputs: [
        { name: 'P', value: pitch, unit: 'mm' },
        { name: 'angle', value: angle, unit: 'deg' },
        { name: 'r', value: jointToBolt, unit: 'ratio' },
      ],
      result: { name: 'stretch', value: stretch, unit: 'mm' },
    },
  });
}
