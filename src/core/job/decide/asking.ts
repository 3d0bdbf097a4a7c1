import { list, reply, text } from '../../phrasing/reply';
import { assertNever } from '../../result';
import { openEnds } from '../announce/ends';
import { toolOf } from '../announce/setting';
import { type Command, MANNERS, type RuleName } from '../command';
import { type Decision, refused, told } from '../decision';
import type { Moment } from '../entry';
import type { Job } from '../job';
import { type AtPass, passAt } from './at-pass';
import { tellWrenches } from './choose-wrench';
import type { ControlRule } from './control';
import { tellBolt, tellLength, tellSide, wholePass } from './tell/bolts';
import { estimated, estimatedHere } from './tell/estimates';
import { angleLeft, limit, timeNeeded, tools, torque, torqueIn } from './tell/figures';
import { brief, cautions, place, remaining, tellNext, timers } from './tell/place';
import { coolant, workOut } from './tell/sums';
import { worked } from './tell/worked';
import { tellSetting } from './wrench';

type Harmless = { [R in RuleName]: (typeof MANNERS)[R] extends 'harmless' ? R : never }[RuleName];
export type AskingRule = Exclude<Harmless, ControlRule>;

/** Harmless questions: they change nothing and are answered at a modest score. */
export const isAsking = (rule: Exclude<RuleName, ControlRule>): rule is AskingRule => MANNERS[rule] === 'harmless';

export function tell(job: Job, c: Command<AskingRule>, now: Moment): Decision {
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
      return told(lubrication(at));
    case 'tell-tool':
      return told(at?.pass.tool ? reply('tool-is', { tool: text(toolOf(job, at.pass)) }) : tools(job));
    case 'tell-length':
      return tellLength(job, at, c);
    case 'tell-side':
      return tellSide(job, at);
    case 'tell-in-unit':
      return torqueIn(at, c);
    case 'tell-setting':
      return tellSetting(job, c);
    case 'tell-limit':
      return told(limit(job));
    case 'tell-angle-left':
      return angleLeft(at);
    case 'tell-list':
      return told(partsListed(job));
    case 'tell-time-needed':
      return timeNeeded(job, at);
    case 'tell-sum':
      return workOut(job);
    case 'tell-worked':
      return told(worked(job, now));
    case 'tell-estimate':
    case 'tell-proof':
    case 'tell-tension':
      return estimated(job, c);
    case 'tell-wrenches':
      return tellWrenches(job);
    case 'tell-pull':
    case 'tell-stretch':
      return estimatedHere(job, at);
    case 'tell-freezing':
    case 'tell-mix':
    case 'tell-concentrate':
      return coolant(job, c);
    case 'show-bench':
    case 'show-record':
    case 'show-jobs':
    case 'show-procedures':
    case 'show-setup':
    case 'show-card':
      return { ...told(reply(c.rule, {})), effects: [c.rule] };
    case 'say-again':
    case 'tell-words':
      // The desk answers these: only it knows what was said last, and what can be heard now.
      return refused(reply('not-here', {}));
    default:
      return assertNever(c.rule);
  }
}

const lubrication = (at: AtPass | undefined) =>
  at?.pass.lubrication
    ? reply('lubrication-is', { lubrication: text(at.pass.lubrication) })
    : reply('lubrication-unknown', {});

const partsListed = (job: Job) =>
  job.list.length > 0
    ? reply('list-is', { parts: list(job.list.map((p) => job.plan.procedure.parts.get(p)?.say ?? p)) })
    : reply('list-empty', {});
