import { fail, ok, type Result } from '../result';
import { type NotPositive, notPositive } from './positive';
import { type Megapascals, type Millimetres, type NewtonMetres, type Newtons, newtonMetres, newtons } from './quantity';
import { pitchDiameter, rootDiameter, type Thread } from './thread';
import type { Working } from './working';

/** The ring under a bolt head or nut: outer diameter of the bearing face and diameter of the hole. */
export type Bearing = { readonly outer: Millimetres; readonly hole: Millimetres };

/** Coefficients of friction in the thread and under the head, without unit; usually 0.08 to 0.20. */
export type Friction = { readonly thread: number; readonly bearing: number };

/**
 * The assembly torque for a preload F in N, in N·m: M = F (0.16 P + 0.58 d2 mu_t + Dkm/2 mu_b), Dkm = (dw + dh)/2.
 * The first term is the pitch, the second the thread, the third the head. Metric threads.
 * Error: `not-positive`. Source: VDI 2230 part 1, form from memory; its 2001 guide table for fine threads agrees.
 */
export function assemblyTorque(
  preload: Newtons,
  thread: Thread,
  bearing: Bearing,
  friction: Friction,
): Result<{ readonly torque: NewtonMetres; readonly working: Working }, NotPositive> {
  const bad = notPositive({
    F: preload,
    μt: friction.thread,
    μb: friction.bearing,
    dw: bearing.outer,
    dh: bearing.hole,
  });
  if (bad) return fail(bad);
  const d2 = pitchDiameter(thread);
  const ring = (bearing.outer + bearing.hole) / 2;
  const arm = 0.16 * thread.pitch + 0.58 * d2 * friction.thread + (ring / 2) * friction.bearing;
  const torque = newtonMetres((preload * arm) / 1000);
  return ok({
    torque,
    working: {
      formula: 'torque-long',
      inputs: [
        { name: 'F', value: preload, unit: 'N' },
        { name: 'P', value: thread.pitch, unit: 'mm' },
        { name: 'd2', value: d2, unit: 'mm' },
        { name: 'μt', value: friction.thread, unit: 'ratio' },
        { name: 'Dkm', value: ring, unit: 'mm' },
        { name: 'μb', value: friction.bearing, unit: 'ratio' },
      ],
      result: { name: 'M', value: torque, unit: 'N·m' },
    },
  });
}

/** The share of the yield strength that tension and torsion together may use while tightening. */
const USED = 0.9;

/**
 * The preload in N at which tension and torsion together reach 90 % of the yield strength Rp in MPa:
 * F = 0.9 Rp A0 / sqrt(1 + 3 k^2), k = 1.5 (d2/d0) (P/(pi d2) + 1.155 mu), d0 = (d2 + d3)/2, A0 = pi d0^2/4.
 * Metric threads. Error: `not-positive`. Source: VDI 2230 part 1, form from memory; its 2001 guide table for fine threads agrees.
 */
export function preloadAtYield(
  thread: Thread,
  yieldStrength: Megapascals,
  threadFriction: number,
): Result<{ readonly preload: Newtons; readonly working: Working }, NotPositive> {
  const bad = notPositive({ Rp: yieldStrength, μ: threadFriction });
  if (bad) return fail(bad);
  const d2 = pitchDiameter(thread);
  const d0 = (d2 + rootDiameter(thread)) / 2;
  const area = (Math.PI / 4) * d0 ** 2;
  const k = 1.5 * (d2 / d0) * (thread.pitch / (Math.PI * d2) + 1.155 * threadFriction);
  const preload = newtons((USED * yieldStrength * area) / Math.sqrt(1 + 3 * k ** 2));
  return ok({
    preload,
    working: {
      formula: 'preload-at-yield',
      inputs: [
        { name: 'Rp', value: yieldStrength, unit: 'MPa' },
        { name: 'A0', value: area, unit: 'mm2' },
        { name: 'd2', value: d2, unit: 'mm' },
        { name: 'd0', value: d0, unit: 'mm' },
        { name: 'P', value: thread.pitch, unit: 'mm' },
        { name: 'μ', value: threadFriction, unit: 'ratio' },
      ],
      result: { name: 'F', value: preload, unit: 'N' },
    },
  });
}
