import { fail, ok, type Result } from '../result';
import {
  base,
  baseOf,
  inUnit,
  millimetres,
  type Percent,
  type Printed,
  type UnitName,
  type WrongDimension,
} from './quantity';
import { roundedFigure } from './shown-figure';
import { sideOf, steady } from './steady';
import type { Working } from './working';
import { deviationOf, usableRange, type Wrench } from './wrench';
import { type Adapter, type AdapterError, settingWith, torqueWith } from './wrench-setting';

/** What to dial on a wrench so that the fastener gets its torque. */
export type Setting = {
  /** On the wrench's scale, at one of its marks. */
  readonly set: Printed;
  /** Before rounding to the mark, in the wrench's unit. */
  readonly exact: number;
  /** What rounding to the mark costs, in percent of the setting: positive when the fastener gets more. */
  readonly roundingPercent: number;
  /** What this setting gives at the fastener, in the unit of the target. */
  readonly atFastener: number;
  /** How far the wrench itself may be off, either way (ISO 6789). */
  readonly deviation: Percent;
  /** The adapter sum; null with no adapter. */
  readonly working: Working | null;
};

export type SettingRefusal =
  | AdapterError
  | WrongDimension
  | {
      readonly code: 'below-range' | 'above-range';
      readonly setting: number;
      readonly least: number;
      readonly most: number;
      readonly unit: UnitName;
      /** Of the wrench's full scale. */
      readonly percentOfMost: number;
    }
  /** The marks are too coarse: the nearest one leaves the window the document gives. */
  | { readonly code: 'marks-too-coarse'; readonly nearest: number; readonly unit: UnitName }
  /** An adapter needs the length of the wrench, which nobody entered. */
  | { readonly code: 'lever-unknown' };

/**
 * The setting of this wrench for a printed torque: corrected for the adapter, rounded to the nearest mark, and refused
 * outside the usable range or the window. The range is tested on what is dialled, after the correction.
 * With no adapter give `concentric`.
 */
export function dial(target: Printed, wrench: Wrench, adapter: Adapter): Result<Setting, SettingRefusal> {
  const torque = baseOf(target, 'torque');
  if (!torque.ok) return torque;
  if (adapter.kind === 'offset' && wrench.lever === undefined) return fail({ code: 'lever-unknown' });
  // With nothing but a socket on the axis the lever cancels out, so any length serves.
  const lever = wrench.lever ?? millimetres(1);
  const corrected = settingWith(torque.value, lever, adapter);
  if (!corrected.ok) return corrected;
  const exact = steady(
    adapter.kind === 'concentric' && target.unit === wrench.unit
      ? target.value
      : inUnit<'torque'>(corrected.value.setting, wrench.unit),
  );
  const set = roundedFigure({ value: nearestMark(exact, wrench.graduation), unit: wrench.unit }, decimalsOf(wrench));
  const range = usableRange(wrench);
  const side = sideOf(set.value, range);
  if (side !== 'within')
    return fail({
      code: side === 'under' ? 'below-range' : 'above-range',
      setting: set.value,
      ...range,
      unit: wrench.unit,
      percentOfMost: (100 * set.value) / wrench.most,
    });
  const given = torqueWith(base<'torque'>(set.value, wrench.unit), lever, adapter);
  if (!given.ok) return given;
  const atFastener = steady((given.value.torque / torque.value) * target.value);
  if (target.window && sideOf(atFastener, target.window) !== 'within')
    return fail({ code: 'marks-too-coarse', nearest: set.value, unit: wrench.unit });
  return ok({
    set,
    exact,
    roundingPercent: (100 * (set.value - exact)) / exact,
    atFastener,
    deviation: deviationOf(wrench),
    working: adapter.kind === 'offset' ? corrected.value.working : null,
  });
}

const nearestMark = (value: number, graduation: number): number => Math.round(value / graduation) * graduation;

/** As many decimals as the graduation has: marks every 0.25 are shown with two. */
const decimalsOf = (wrench: Wrench): number => String(wrench.graduation).split('.')[1]?.length ?? 0;
