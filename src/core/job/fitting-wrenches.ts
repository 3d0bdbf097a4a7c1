import { base } from '../fastening/quantity';
import type { AdapterOn } from './adapter';
import type { ChosenWrench } from './chosen-wrench';
import type { Job } from './job';
import { type PassSetting, settingOf, type TorquePass } from './setting';

/** The largest torque of its scale decides which of two wrenches is the smaller, whatever units they are marked in. */
const largest = ({ most, unit }: ChosenWrench): number => base<'torque'>(most, unit);

export const bySize = (a: ChosenWrench, b: ChosenWrench): number => largest(a) - largest(b);

/** What a pass would be set at with another wrench in hand. */
export const settingWith = (
  job: Job,
  pass: TorquePass,
  wrench: ChosenWrench,
  adapter: AdapterOn | null = job.adapter,
): PassSetting => settingOf({ ...job, wrenches: new Map([[pass.tool ?? '', wrench]]) }, pass, adapter);

export type Fitting = { readonly wrench: ChosenWrench; readonly setting: PassSetting & { readonly kind: 'set' } };

/** The owner's wrenches that can be set for a pass as it is, the smallest first. None that fell in this job is one of them. */
export const fittingWrenches = (job: Job, pass: TorquePass): readonly Fitting[] =>
  job.owned
    .filter(({ id }) => !job.fallen.has(id))
    .flatMap((wrench) => {
      const setting = settingWith(job, pass, wrench);
      return setting.kind === 'set' ? [{ wrench, setting }] : [];
    })
    .sort((a, b) => bySize(a.wrench, b.wrench));

/** Those that are not in hand already. */
export function otherWrenches(job: Job, pass: TorquePass): readonly Fitting[] {
  const inHand = job.wrenches.get(pass.tool ?? '')?.id;
  return pass.tool === undefined ? [] : fittingWrenches(job, pass).filter(({ wrench }) => wrench.id !== inHand);
}
