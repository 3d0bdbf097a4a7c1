import type { Printed, UnitIn, UnitName } from '../fastening/quantity';
import { shownIn } from '../fastening/shown-figure';
import { passAt } from '../job/decide/bolt';
import { holdOf } from '../job/hold';
import type { Job } from '../job/job';
import { nextReading, workPlace } from '../job/place';
import { stepIn } from '../job/plan';
import { isTorque, settingOf, type TorquePass } from '../job/setting';
import { degrees, type Figure, quantity, type Reply, reply, text } from '../phrasing/reply';

/** The value to work to: what the wrench is set to, how far to turn, how much to fill, or what is read next. */
export function valueNow(job: Job): Reply | undefined {
  const at = passAt(job);
  if (holdOf(job)) return undefined;
  if (at) {
    switch (at.pass.kind) {
      case 'torque':
      case 'repeat':
        return figure(setNow(job, at.pass));
      case 'angle':
      case 'slacken':
        return reply('shown-degrees', { degrees: degrees(at.pass.degrees) });
      case 'wait':
        return undefined;
    }
  }
  const work = workPlace(job);
  if (work.kind !== 'step') return undefined;
  const { step } = stepIn(job.plan, work.step);
  if (step.kind === 'fill') return figure(step.amount);
  const reading = nextReading(job, step.id);
  return reading ? reply('shown-reading', { reading: text(reading.say) }) : undefined;
}

/** Units to show beside the document's own: a torque left out is in the other usual one, an amount as the document pairs it. */
export type AlsoIn = { readonly torque?: UnitIn<'torque'>; readonly volume?: UnitIn<'volume'> };

/** The same in another unit, small beside it: as the document prints it beside its own, else converted. */
export function valueAlsoNow(job: Job, alsoIn: AlsoIn = {}): Printed | null {
  if (holdOf(job)) return null;
  const at = passAt(job);
  if (at) return isTorque(at.pass) ? torqueAlso(job, at.pass, alsoIn.torque) : null;
  const work = workPlace(job);
  if (work.kind !== 'step') return null;
  const { step } = stepIn(job.plan, work.step);
  return step.kind === 'fill' ? beside(step.amount, alsoIn.volume ?? step.amount.also?.[0]?.unit) : null;
}

function torqueAlso(job: Job, pass: TorquePass, alsoIn: UnitIn<'torque'> | undefined): Printed | null {
  const target = setNow(job, pass);
  // What another wrench or an adapter makes of the maker's figure stands beside it, not in its place.
  if (target !== pass.target) return pass.target;
  return beside(target, alsoIn ?? (target.unit === 'N·m' ? 'lbf·ft' : 'N·m'));
}

/** Null where there is no other, or it would be the same once more. */
function beside(figure: Printed, unit: UnitName | undefined): Printed | null {
  if (unit === undefined || unit === figure.unit) return null;
  const other = shownIn(figure, unit);
  return other.ok ? other.value : null;
}

/** What is set on the wrench in hand; the maker's own figure where nothing else is known, or nothing can be set. */
function setNow(job: Job, pass: TorquePass): Printed {
  const setting = settingOf(job, pass);
  return setting.kind === 'set' ? setting.set : setting.target;
}

const figure = (f: Figure): Reply => reply('shown-value', { value: quantity(f) });
