import { convert, type UnitName } from '../../fastening/quantity';
import { UNITS } from '../../fastening/unit';
import {
  clock,
  count,
  degrees,
  duration,
  list,
  quantity,
  type Reply,
  replies,
  reply,
  text,
} from '../../phrasing/reply';
import { announce, hazards, nextBolt, openEnds, setWrench, whereIs } from '../announce';
import { type Command, integerIn, MANNERS, optionIn, type RuleName } from '../command';
import { type Decision, refused, told } from '../decision';
import { lastWorkDone } from '../describe';
import type { Moment } from '../entry';
import type { Job } from '../job';
import { limitOf } from '../limit';
import { passStatesOf, workPlace } from '../place';
import { stepIn } from '../plan';
import { boltState, boltsLeft, expectedBolt, markDegrees, passState } from '../tightening';
import { timeLeft } from '../timer';
import { type AtPass, passAt } from './bolt';

/** Harmless questions: they change nothing and are answered at a modest score. */
export const isAsking = (rule: RuleName): boolean => MANNERS[rule] === 'harmless';

export function tell(job: Job, c: Command, now: Moment): Decision {
  const at = passAt(job);
  switch (c.rule) {
    case 'tell-next':
      return told(...tellNext(job, at, now));
    case 'tell-torque':
      return told(torque(at));
    case 'tell-caution':
      return told(...cautions(job));
    case 'tell-place':
      return told(...place(job, at, now));
    case 'tell-remaining':
      return told(remaining(job, at));
    case 'tell-loose-ends':
      return told(
        job.ends.size > 0 ? reply('loose-ends', { ends: openEnds(job.ends.values()) }) : reply('no-loose-ends', {}),
      );
    case 'tell-bolt':
      return tellBolt(at, c);
    case 'tell-pass':
      return at ? told(wholePass(at)) : refused(reply('not-here', {}));
    case 'tell-brief':
      return told(...brief(job, at, now));
    case 'tell-timers':
      return told(timers(job, now));
    case 'tell-lubrication':
      return told(
        at?.pass.lubrication
          ? reply('lubrication-is', { lubrication: text(at.pass.lubrication) })
          : reply('lubrication-unknown', {}),
      );
    case 'tell-tool':
      return told(
        at?.pass.tool
          ? reply('tool-is', { tool: text(job.plan.procedure.tools.get(at.pass.tool)?.say ?? '') })
          : tools(job),
      );
    case 'tell-length':
      return tellLength(job, at, c);
    case 'tell-side': {
      const bolt = at ? expectedBolt(at.pass, at.state) : undefined;
      if (!at || bolt === undefined) return refused(reply('not-here', {}));
      return told(reply('side-is', { bolt: count(bolt), where: text(whereIs(job, at.step, bolt)) }));
    }
    case 'tell-in-unit':
      return tellInUnit(at, c);
    case 'tell-limit':
      return told(tellLimit(job));
    case 'tell-angle-left':
      return tellAngleLeft(at);
    case 'tell-list':
      return told(
        job.list.length > 0
          ? reply('list-is', { parts: list(job.list.map((p) => job.plan.procedure.parts.get(p)?.say ?? p)) })
          : reply('list-empty', {}),
      );
    case 'tell-time-needed':
      return at
        ? told(reply('tightening-takes', { bolts: count(actionsLeft(job, at)), passes: count(at.passes.length) }))
        : refused(reply('not-here', {}));
    default:
      return refused(reply('not-here', {}));
  }
}

/** "Next" only tells. It never completes anything. */
function tellNext(job: Job, at: AtPass | undefined, now: Moment): readonly Reply[] {
  if (at && at.part === 'work') return nextBolt(job, at.step, at.pass);
  if (at && at.part === 'set') return [setWrench(job, at.pass)];
  return announce(job, now);
}

function torque(at: AtPass | undefined): Reply {
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

function cautions(job: Job): readonly Reply[] {
  const at = workPlace(job);
  if (at.kind !== 'step' && at.kind !== 'pass') return [reply('no-caution-here', {})];
  const all = hazards(stepIn(job.plan, at.step).step);
  return all.length > 0 ? all : [reply('no-caution-here', {})];
}

function place(job: Job, at: AtPass | undefined, now: Moment): readonly Reply[] {
  if (at && at.pass.kind !== 'wait') {
    const bolt = expectedBolt(at.pass, at.state);
    const left = boltsLeft(at.pass, at.state);
    if (bolt !== undefined)
      return [
        reply('place-in-pass', {
          pass: text(at.pass.say),
          number: count(at.passes.indexOf(at.pass) + 1),
          total: count(at.passes.length),
          done: count(at.pass.order.length - left),
          bolts: count(at.pass.order.length),
          bolt: count(bolt),
          where: text(whereIs(job, at.step, bolt)),
        }),
      ];
  }
  const work = workPlace(job);
  if (work.kind !== 'step') return announce(job, now);
  const { step, phase } = stepIn(job.plan, work.step);
  return [
    reply('place-in-step', {
      step: text(step.say),
      number: count(phase.steps.indexOf(step) + 1),
      total: count(phase.steps.length),
      phase: text(phase.say),
    }),
  ];
}

function remaining(job: Job, at: AtPass | undefined): Reply {
  if (at && at.pass.kind !== 'wait')
    return reply('remaining-bolts', {
      left: count(boltsLeft(at.pass, at.state)),
      passes: count(at.passes.length - at.passes.indexOf(at.pass) - 1),
    });
  const work = workPlace(job);
  if (work.kind !== 'step') return reply('remaining-steps', { left: count(0), phase: text('') });
  const { phase, step } = stepIn(job.plan, work.step);
  return reply('remaining-steps', {
    left: count(phase.steps.length - phase.steps.indexOf(step)),
    phase: text(phase.say),
  });
}

function tellBolt(at: AtPass | undefined, c: Command): Decision {
  const bolt = integerIn(c, 'bolt');
  if (!at || bolt === undefined) return refused(reply('not-here', {}));
  if (!at.pass.order.includes(bolt)) return told(reply('bolt-not-in-pass', { bolt: count(bolt) }));
  const state = boltState(at.state, bolt);
  switch (state.kind) {
    case 'done':
      return told(reply('bolt-is-done', { bolt: count(bolt) }));
    case 'open':
      return told(reply('bolt-is-open', { bolt: count(bolt) }));
    case 'partial':
      return told(reply('bolt-is-partial', { bolt: count(bolt), degrees: degrees(state.degrees) }));
    case 'unknown':
      return told(reply('bolt-is-unknown', { bolt: count(bolt) }));
    case 'held':
      return told(reply('bolt-is-held', { bolt: count(bolt) }));
  }
}

const wholePass = (at: AtPass): Reply =>
  reply('whole-pass', {
    pass: text(at.pass.say),
    value: replies([torque(at)]),
    bolts: { kind: 'bolts', numbers: at.pass.order },
  });

/** Where, the last three, what is open, what is running, and the hazards of this step. */
function brief(job: Job, at: AtPass | undefined, now: Moment): readonly Reply[] {
  const last = lastWorkDone(job, 3);
  return [
    ...place(job, at, now),
    ...(last.length > 0 ? [reply('last-done', { items: replies(last) })] : []),
    job.ends.size > 0 ? reply('loose-ends', { ends: openEnds(job.ends.values()) }) : reply('no-loose-ends', {}),
    ...(job.timers.size > 0 ? [timers(job, now)] : []),
    ...cautions(job).filter((r) => r.code !== 'no-caution-here'),
  ];
}

function timers(job: Job, now: Moment): Reply {
  const all = [...job.timers.values()].map((t) => {
    const left = timeLeft(t, now);
    return left > 0
      ? reply('timer-running', { timer: text(t.say), left: duration(left) })
      : reply('timer-over', { timer: text(t.say) });
  });
  return all.length > 0 ? reply('timers-left', { timers: replies(all) }) : reply('no-timers', {});
}

function tools(job: Job): Reply {
  const work = workPlace(job);
  if (work.kind !== 'step') return reply('no-tool-here', {});
  const names = stepIn(job.plan, work.step).step.tools.map((t) => job.plan.procedure.tools.get(t)?.say ?? t);
  return names.length > 0 ? reply('tool-is', { tool: list(names) }) : reply('no-tool-here', {});
}

function tellLength(job: Job, at: AtPass | undefined, c: Command): Decision {
  const bolt = integerIn(c, 'bolt');
  if (bolt === undefined || !at) return refused(reply('not-here', {}));
  const pattern =
    at.step.kind === 'tighten' || at.step.kind === 'slacken'
      ? job.plan.procedure.patterns.get(at.step.pattern)
      : undefined;
  const length = pattern?.fasteners.find((f) => f.number === bolt)?.length;
  return told(
    length
      ? reply('length-is', { bolt: count(bolt), length: quantity(length) })
      : reply('no-length', { bolt: count(bolt) }),
  );
}

const isUnitName = (s: string): s is UnitName => Object.hasOwn(UNITS, s);

function tellInUnit(at: AtPass | undefined, c: Command): Decision {
  const unit = optionIn(c, 'unit');
  if (!at || unit === undefined || !isUnitName(unit) || (at.pass.kind !== 'torque' && at.pass.kind !== 'repeat'))
    return refused(reply('not-here', {}));
  const converted = convert(at.pass.target, unit);
  return converted.ok
    ? told(reply('in-unit', { value: quantity({ value: converted.value, unit }) }))
    : refused(reply('not-here', {}));
}

function tellLimit(job: Job): Reply {
  const work = workPlace(job);
  const step = work.kind === 'step' ? stepIn(job.plan, work.step).step : undefined;
  const limit = step ? limitOf(job.plan.procedure, step) : undefined;
  return limit ? reply('limit-is', { limit: text(limit.say), whose: text(limit.whose) }) : reply('no-limit-here', {});
}

function tellAngleLeft(at: AtPass | undefined): Decision {
  const bolt = at ? expectedBolt(at.pass, at.state) : undefined;
  if (at?.pass.kind !== 'angle' || bolt === undefined) return refused(reply('not-here', {}));
  const state = boltState(at.state, bolt);
  const turned = state.kind === 'partial' ? state.degrees : 0;
  const end = markDegrees(at.passes, at.passes.indexOf(at.pass)).after;
  const hour = Math.round(end / 30) % 12;
  return told(
    reply('angle-left', { degrees: degrees(at.pass.degrees - turned), clock: clock(hour === 0 ? 12 : hour) }),
  );
}

/** Fastener operations left in this tightening, this pass included. */
function actionsLeft(job: Job, at: AtPass): number {
  const states = passStatesOf(job, at.step.id);
  return at.passes.reduce((sum, p) => sum + boltsLeft(p, passState(states, p.id)), 0);
}
