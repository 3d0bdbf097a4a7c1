import { roundedFigure } from '../../fastening/shown-figure';
import { quantity, type Reply, reply, text } from '../../phrasing/reply';
import { type Command, optionIn } from '../command';
import { type Decision, refused, told } from '../decision';
import type { Moment } from '../entry';
import { type Fitting, fittingWrenches, otherWrenches } from '../fitting-wrenches';
import type { Job } from '../job';
import { isTorque, type TorquePass } from '../setting';
import { passAt } from './at-pass';
import { withWrench } from './wrench';

function torquePass(job: Job): TorquePass | undefined {
  const at = passAt(job);
  return at && isTorque(at.pass) ? at.pass : undefined;
}

/** "Which wrenches fit?" Each with its setting, what its marks cost and how far it may itself be off. */
export function tellWrenches(job: Job): Decision {
  const pass = torquePass(job);
  if (!pass) return refused(reply('not-here', {}));
  const all = fittingWrenches(job, pass);
  return told(...(all.length > 0 ? all.map(fits) : [reply('wrench-fits-not', {})]));
}

export const fits = ({ wrench, setting }: Fitting): Reply =>
  reply('wrench-fits', {
    wrench: text(wrench.say),
    setting: quantity(setting.set),
    rounding: quantity(roundedFigure({ value: Math.abs(setting.roundingPercent), unit: '%' }, 1)),
    error: quantity({ value: setting.errorPercent ?? 0, unit: '%' }),
  });

/** Another of the owner's wrenches, by its name or by its size among those that fit. Its setting is awaited anew. */
export function useWrench(job: Job, c: Command, now: Moment): Decision {
  const pass = torquePass(job);
  if (!pass || pass.tool === undefined) return refused(reply('not-here', {}));
  const others = otherWrenches(job, pass);
  const id = optionIn(c, 'wrench');
  const found = id === undefined ? bySizeWord(job, pass, optionIn(c, 'size')) : others.find((o) => o.wrench.id === id);
  if (!found || !others.some(({ wrench }) => wrench.id === found.wrench.id)) return refused(reply('wrench-only', {}));
  return withWrench(job, pass.tool, found.wrench, now);
}

/** The smallest or the largest that fits, in hand or not; "the other" only where there is one other. */
function bySizeWord(job: Job, pass: TorquePass, size: string | undefined): Fitting | undefined {
  const all = fittingWrenches(job, pass);
  if (size === 'small') return all[0];
  if (size === 'large') return all.at(-1);
  const others = otherWrenches(job, pass);
  return others.length === 1 ? others[0] : undefined;
}
