import { base, type Millimetres, type NewtonMetres, type Percent, percent, type UnitIn } from './quantity';

/** A day as "2026-11-30": such days compare as text, and no time zone can move them. */
export type IsoDay = string;

/** A torque wrench as its owner entered it. Range and graduation are in its own unit, as marked on its scale. */
export type Wrench = {
  readonly id: string;
  readonly say: string;
  readonly unit: UnitIn<'torque'>;
  readonly least: number;
  readonly most: number;
  readonly graduation: number;
  /** From the middle of the drive to the middle of the grip; needed only with an adapter. */
  readonly lever?: Millimetres;
  readonly calibrationDue?: IsoDay;
  /** Dropped or abused since it was last calibrated. */
  readonly dropped: boolean;
};

export type WrenchDoubt =
  | { readonly code: 'calibration-unknown' }
  | { readonly code: 'calibration-overdue'; readonly due: IsoDay; readonly today: IsoDay }
  | { readonly code: 'dropped' };

/**
 * Why readings of this wrench are in doubt today; empty when nothing is known against it. It may be used on its due day.
 * Source: FAA AC 43.13-1B, 7-40: calibrated yearly, and after any drop or abuse.
 */
export function doubtsAbout(wrench: Wrench, today: IsoDay): readonly WrenchDoubt[] {
  const doubts: WrenchDoubt[] = wrench.dropped ? [{ code: 'dropped' }] : [];
  if (wrench.calibrationDue === undefined) return [...doubts, { code: 'calibration-unknown' }];
  return wrench.calibrationDue < today
    ? [...doubts, { code: 'calibration-overdue', due: wrench.calibrationDue, today }]
    : doubts;
}

/** How a wrench stands with its calibration on a day. It is due `soon` from thirty days before, time to send it away. */
export type Calibration = 'unknown' | 'good' | 'soon' | 'overdue';

const SOON_DAYS = 30;
const DAY_MS = 86_400_000;

export function calibrationOf({ calibrationDue: due }: Wrench, today: IsoDay): Calibration {
  if (due === undefined) return 'unknown';
  if (due < today) return 'overdue';
  // Both are read as the first moment of their day in UTC, so that what is between them is whole days.
  return Date.parse(due) - Date.parse(today) <= SOON_DAYS * DAY_MS ? 'soon' : 'good';
}

/** Below this share of its full scale a click-type wrench is not to be trusted, whatever its lowest mark (ISO 6789 tests from 20 %). */
const USABLE_FROM = 0.2;

/** The settings this wrench may be used at, both ends included, in its own unit. */
export const usableRange = (wrench: Wrench): { readonly least: number; readonly most: number } => ({
  least: Math.max(USABLE_FROM * wrench.most, wrench.least),
  most: wrench.most,
});

/**
 * How far a setting may be off either way, in percent, for a hand torque tool with this maximum: 4 % where the maximum
 * is above 10 N·m, 6 % at or below. The tool's maximum decides, not the setting. Source: ISO 6789.
 */
export const permissibleDeviation = (most: NewtonMetres): Percent => percent(most > 10 ? 4 : 6);

export const deviationOf = (wrench: Wrench): Percent => permissibleDeviation(base<'torque'>(wrench.most, wrench.unit));
