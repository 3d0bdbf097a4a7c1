import { fail, ok, type Result } from '../result';
import { type NotPositive, notPositive } from './positive';
import { type Degrees, type Millimetres, type NewtonMetres, newtonMetres } from './quantity';
import type { Working } from './working';

/**
 * What stands between wrench and fastener. A socket extension on the axis changes nothing. An offset adapter
 * (crow's foot) moves the fastener off the drive: `angle` is measured from straight ahead, so 0 lengthens the wrench,
 * 90 leaves it as it is and 180 points back at the hand and shortens it.
 */
export type Adapter =
  | { readonly kind: 'concentric' }
  | { readonly kind: 'offset'; readonly length: Millimetres; readonly angle: Degrees };

export type AdapterError =
  | NotPositive
  /** The adapter points back as far as the hand or past it: the pull would not turn the fastener. */
  | { readonly code: 'no-lever'; readonly effective: number };

/**
 * The setting S, in N·m, that gives the torque T at the fastener: S = T · L / (L + E · cos a).
 *
 * `lever` is L, from the middle of the drive to the middle of the grip, in mm; E is the adapter's length, from the
 * middle of the drive to the middle of the fastener, in mm. True only while the hand stays at the grip from which L
 * was measured. Errors: `not-positive` for T, L or E; `no-lever`.
 * Source: US Army TM 9-254, ch. 4, 4-1 d; US Navy training course 14315, figs 3-43 to 3-45.
 */
export function settingWith(
  torque: NewtonMetres,
  lever: Millimetres,
  adapter: Adapter,
): Result<{ readonly setting: NewtonMetres; readonly working: Working }, AdapterError> {
  const ratio = leverRatio(torque, lever, adapter, 'T');
  if (!ratio.ok) return ratio;
  const setting = newtonMetres(torque / ratio.value);
  return ok({ setting, working: workingOf('adapter-setting', ['T', torque], lever, adapter, ['S', setting]) });
}

/**
 * The torque T, in N·m, that a setting S gives at the fastener: T = S · (L + E · cos a) / L. The inverse of
 * `settingWith`, with the same units, errors and source.
 */
export function torqueWith(
  setting: NewtonMetres,
  lever: Millimetres,
  adapter: Adapter,
): Result<{ readonly torque: NewtonMetres; readonly working: Working }, AdapterError> {
  const ratio = leverRatio(setting, lever, adapter, 'S');
  if (!ratio.ok) return ratio;
  const torque = newtonMetres(setting * ratio.value);
  return ok({ torque, working: workingOf('adapter-torque', ['S', setting], lever, adapter, ['T', torque]) });
}

/**
 * What to pull a self-locking fastener to, in N·m: the torque wanted plus the torque that turns it freely.
 * Source: FAA AC 43.13-1B, 7-40 d.
 */
export const torqueOverDrag = (wanted: NewtonMetres, drag: NewtonMetres): NewtonMetres => newtonMetres(wanted + drag);

/** Torque at the fastener for each unit of setting. */
function leverRatio(
  given: NewtonMetres,
  lever: Millimetres,
  adapter: Adapter,
  name: 'T' | 'S',
): Result<number, AdapterError> {
  const lengths = adapter.kind === 'offset' ? { L: lever, E: adapter.length } : {};
  const bad = notPositive({ [name]: given, ...lengths });
  if (bad) return fail(bad);
  if (adapter.kind === 'concentric') return ok(1);
  const effective = lever + adapter.length * cosine(adapter.angle);
  return effective > 0 ? ok(effective / lever) : fail({ code: 'no-lever', effective });
}

/** Exactly 0 at a right angle, where the general function leaves a trace that would be shown as a correction. */
const cosine = (angle: Degrees): number => (Math.abs(angle) % 180 === 90 ? 0 : Math.cos((angle * Math.PI) / 180));

function workingOf(
  formula: 'adapter-setting' | 'adapter-torque',
  [from, given]: readonly [string, NewtonMetres],
  lever: Millimetres,
  adapter: Adapter,
  [to, found]: readonly [string, NewtonMetres],
): Working {
  const length = adapter.kind === 'offset' ? adapter.length : 0;
  const angle = adapter.kind === 'offset' ? adapter.angle : 0;
  return {
    formula,
    inputs: [
      { name: from, value: given, unit: 'N·m' },
      { name: 'L', value: lever, unit: 'mm' },
      { name: 'E', value: length, unit: 'mm' },
      { name: 'a', value: angle, unit: 'deg' },
    ],
    result: { name: to, value: found, unit: 'N·m' },
  };
}
