import { millimetres } from '../fastening/quantity';
import type { IsoDay, Wrench } from '../fastening/wrench';

/** A wrench as the log keeps it. Range and graduation in its own unit, the lever in millimetres. */
export type ChosenWrench = Pick<Wrench, 'id' | 'say' | 'unit' | 'least' | 'most' | 'graduation'> & {
  /** From the middle of the drive to the middle of the grip; null where nobody measured it. */
  readonly lever: number | null;
  readonly calibrationDue: IsoDay | null;
};

export const wrenchOf = (chosen: ChosenWrench, dropped: boolean): Wrench => ({
  id: chosen.id,
  say: chosen.say,
  unit: chosen.unit,
  least: chosen.least,
  most: chosen.most,
  graduation: chosen.graduation,
  ...(chosen.lever === null ? {} : { lever: millimetres(chosen.lever) }),
  ...(chosen.calibrationDue === null ? {} : { calibrationDue: chosen.calibrationDue }),
  dropped,
});
