import { isUnitName } from '../../../fastening/unit';
import { clock, count, degrees, duration, list, quantity, type Reply, reply, text } from '../../../phrasing/reply';
import { type Command, optionIn } from '../../command';
import { type Decision, refused, told } from '../../decision';
import { howLong } from '../../how-long';
import type { Job } from '../../job';
import { limitOf } from '../../limit';
import { clockOf, markDegrees } from '../../marks';
import { passStatesOf, workPlace } from '../../place';
import { stepIn } from '../../plan';
import { isTorque, targetIn } from '../../setting';
import { boltState, boltsLeft, expectedBolt, passState } from '../../tightening';
import type { AtPass } from '../at-pass';
import { readingFirst } from '../floor';

/** The maker's figure, as it is: what to set for it on the wrench in hand is another question. */
export function torque(at: AtPass | undefined): Reply {
  if (!at) return reply('no-torque-here', {});
  switch (at.pass.kind) {
    case 'torque':
    case 'repeat':
      return at.pass.lubrication
        ? reply('torque-is-lubricated', { value: quantity(at.pass.target), lubrication: text(at.pass.lubrication) })
        : reply('torque-is', { value: quantity(at.pass.target) });
    case 'angle':
      return reply('angle-is', { degrees: degrees(at.pass.degrees) });
    case 'slacken':
      return reply('slacken-now', { degrees: degrees(at.pass.degrees) });
    case 'wait':
      return reply('no-torque-here', {});
  }
}

export function torqueIn(at: AtPass | undefined, c: Command): Decision {
  const unit = optionIn(c, 'unit');
  if (!at || unit === undefined || !isUnitName(unit) || !isTorque(at.pass)) return refused(reply('not-here', {}));
  const figure = targetIn(at.pass, unit);
  return figure.ok ? told(reply('in-unit', { value: quantity(figure.value) })) : refused(reply('not-here', {}));
}

export function angleLeft(at: AtPass | undefined): Decision {
  const bolt = at ? expectedBolt(at.pass, at.state) : undefined;
  if (at?.pass.kind !== 'angle' || bolt === undefined) return refused(reply('not-here', {}));
  const state = boltState(at.state, bolt);
  if (state.kind === 'unknown') return told(reply('bolt-is-unknown', { bolt: count(bolt) }));
  if (state.kind === 'held') return told(reply('bolt-is-held', { bolt: count(bolt) }));
  if (state.kind === 'done') return told(readingFirst(at, bolt) ?? reply('bolt-is-done', { bolt: count(bolt) }));
  const turned = state.kind === 'partial' ? state.degrees : 0;
  const { after } = markDegrees(at.passes, at.passes.indexOf(at.pass));
  return told(reply('angle-left', { degrees: degrees(at.pass.degrees - turned), clock: clock(clockOf(after)) }));
}

/** Fastener operations left in this tightening, this pass included. */
export function timeNeeded(job: Job, at: AtPass | undefined): Decision {
  if (!at) return refused(reply('not-here', {}));
  const states = passStatesOf(job, at.step.id);
  const left = at.passes.reduce((sum, p) => sum + boltsLeft(p, passState(states, p.id)), 0);
  const time = duration(howLong(job.plan.procedure, at.passes, states));
  return told(reply('tightening-takes', { bolts: count(left), passes: count(at.passes.length), time }));
}

/** The figure and whose figure it is: limits differ between makers. */
export function limit(job: Job): Reply {
  const work = workPlace(job);
  const step = work.kind === 'step' ? stepIn(job.plan, work.step).step : undefined;
  const found = step ? limitOf(job.plan.procedure, step) : undefined;
  if (!found) return reply('no-limit-here', {});
  const { least, most } = found;
  const named = { limit: text(found.say), whose: text(found.whose) };
  if (least && most) return reply('limit-between', { ...named, least: quantity(least), most: quantity(most) });
  if (most) return reply('limit-most', { ...named, most: quantity(most) });
  return least ? reply('limit-least', { ...named, least: quantity(least) }) : reply('limit-is', named);
}

export function tools(job: Job): Reply {
  const work = workPlace(job);
  if (work.kind !== 'step') return reply('no-tool-here', {});
  const names = stepIn(job.plan, work.step).step.tools.map((t) => job.plan.procedure.tools.get(t)?.say ?? t);
  return names.length > 0 ? reply('tool-is', { tool: list(names) }) : reply('no-tool-here', {});
}
