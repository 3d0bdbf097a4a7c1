import { dial, type SettingRefusal } from '../fastening/dial';
import type { Printed, UnitName } from '../fastening/quantity';
import { shownIn } from '../fastening/shown-figure';
import { doubtsAbout, type WrenchDoubt } from '../fastening/wrench';
import type { Pass } from '../procedure/procedure';
import { type AdapterOn, adapterOf } from './adapter';
import { wrenchOf } from './chosen-wrench';
import type { Moment } from './entry';
import type { Job } from './job';

export type TorquePass = Pass & { readonly kind: 'torque' | 'repeat' };

export const isTorque = (pass: Pass): pass is TorquePass => pass.kind === 'torque' || pass.kind === 'repeat';

/** What to dial for a torque pass with the wrench and adapter in hand, or why that cannot be. */
export type PassSetting =
  | {
      readonly kind: 'set';
      readonly set: Printed;
      readonly target: Printed;
      readonly corrected: boolean;
      /** What rounding to a mark of the wrench costs, in percent of the setting. */
      readonly roundingPercent: number;
      /** How far the wrench itself may be off, in percent either way (ISO 6789); null for one that nobody entered. */
      readonly errorPercent: number | null;
    }
  | { readonly kind: 'refused'; readonly why: SettingRefusal; readonly target: Printed };

/**
 * With no wrench entered and no adapter on, the document's figure is what is set. An adapter without a known wrench
 * cannot be corrected for, so nothing is set with it.
 */
export function settingOf(job: Job, pass: TorquePass, adapter: AdapterOn | null = job.adapter): PassSetting {
  const { target } = pass;
  const chosen = pass.tool === undefined ? undefined : job.wrenches.get(pass.tool);
  if (!chosen)
    return adapter === null
      ? { kind: 'set', set: target, target, corrected: false, roundingPercent: 0, errorPercent: null }
      : { kind: 'refused', why: { code: 'lever-unknown' }, target };
  const found = dial(targetFor(pass, chosen.unit), wrenchOf(chosen, false), adapterOf(adapter));
  if (!found.ok) return { kind: 'refused', why: found.error, target };
  const { set, roundingPercent, deviation } = found.value;
  const corrected = set.unit !== target.unit || set.value !== target.value;
  return { kind: 'set', set: corrected ? set : target, target, corrected, roundingPercent, errorPercent: deviation };
}

/** The maker's own figure in the wrench's unit where one is printed; a window is only given in the first unit. */
function targetFor({ target, window }: TorquePass, unit: UnitName): Printed {
  const within = window ?? target.window;
  if (within) return { ...target, window: within };
  const printed = [target, ...(target.also ?? [])].find((one) => one.unit === unit);
  return printed ?? target;
}

/** What speaks against the wrench of this pass today. Nothing is known against one that nobody entered. */
export function doubtsOf(job: Job, pass: Pass, now: Moment): readonly WrenchDoubt['code'][] {
  if (!isTorque(pass) || pass.tool === undefined) return [];
  const chosen = job.wrenches.get(pass.tool);
  const dropped = job.dropped.has(pass.tool);
  if (!chosen) return dropped ? ['dropped'] : [];
  const today = new Date(now.at).toISOString().slice(0, 10);
  return doubtsAbout(wrenchOf(chosen, dropped), today).map((doubt) => doubt.code);
}

/** The number and unit that mean the wrench is set right: what is set, or the document's own pair of it. */
export function isSetRight(setting: PassSetting, value: number, unit: string | null): boolean {
  if (setting.kind === 'refused') return false;
  const { set, corrected } = setting;
  const pairs = corrected ? [set] : [set, ...(set.also ?? [])];
  return pairs.some((one, index) => one.value === value && (unit === one.unit || (unit === null && index === 0)));
}

/** The document's figure in the unit of the person, as printed where it is. */
export const targetIn = (pass: TorquePass, unit: UnitName) => shownIn(pass.target, unit);
