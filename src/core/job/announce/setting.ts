import type { SettingRefusal } from '../../fastening/dial';
import { degrees, quantity, type Reply, reply, text } from '../../phrasing/reply';
import type { Pass } from '../../procedure/procedure';
import { assertNever } from '../../result';
import { wayOf } from '../adapter';
import type { Moment } from '../entry';
import type { Job } from '../job';
import { doubtsOf, isTorque, settingOf, type TorquePass } from '../setting';

/** The tool and the number to set, which is then awaited back; or why this wrench will not do. */
export function setWrench(job: Job, pass: Pass, now: Moment): readonly Reply[] {
  const tool = text(toolOf(job, pass));
  if (isTorque(pass)) return [...doubtReplies(job, pass, now), ...adapterReply(job), settingReply(job, pass)];
  switch (pass.kind) {
    case 'angle':
      return job.terse
        ? [reply('set-terse', { setting: degrees(pass.degrees) })]
        : [reply('set-angle', { tool, degrees: degrees(pass.degrees) })];
    case 'slacken':
      return [reply('slacken-now', { degrees: degrees(pass.degrees) })];
    case 'wait':
      return [reply('no-tool-here', {})];
  }
}

/** What the owner calls the wrench in hand, or else what the document calls the tool. */
export function toolOf(job: Job, pass: Pass): string {
  if (pass.tool === undefined) return '';
  return job.wrenches.get(pass.tool)?.say ?? job.plan.procedure.tools.get(pass.tool)?.say ?? pass.tool;
}

function settingReply(job: Job, pass: TorquePass): Reply {
  const tool = text(toolOf(job, pass));
  const setting = settingOf(job, pass);
  if (setting.kind === 'refused') return refusalReply(setting.why, tool, setting.target);
  const set = quantity(setting.set);
  if (job.terse) return reply('set-terse', { setting: set });
  if (setting.corrected) {
    const lubrication = text(pass.lubrication ?? '');
    return reply('set-wrench-corrected', { tool, lubrication, setting: set, gives: quantity(setting.target) });
  }
  return pass.lubrication
    ? reply('set-wrench-lubricated', { tool, setting: set, lubrication: text(pass.lubrication) })
    : reply('set-wrench', { tool, setting: set });
}

export function refusalReply(why: SettingRefusal, tool: ReturnType<typeof text>, target: TorquePass['target']): Reply {
  switch (why.code) {
    case 'below-range':
    case 'above-range': {
      const { setting, least, most, unit } = why;
      const slots = {
        tool,
        setting: quantity({ value: setting, unit }),
        least: quantity({ value: least, unit }),
        most: quantity({ value: most, unit }),
      };
      return why.code === 'below-range' ? reply('setting-below', slots) : reply('setting-above', slots);
    }
    case 'marks-too-coarse':
      return reply('setting-too-coarse', { setting: quantity(target) });
    case 'lever-unknown':
      return reply('setting-needs-lever', {});
    case 'not-positive':
    case 'no-lever':
    case 'wrong-dimension':
      return reply('setting-not-possible', {});
    default:
      return assertNever(why);
  }
}

const adapterReply = (job: Job): readonly Reply[] =>
  job.adapter === null
    ? []
    : [
        reply('with-adapter', {
          length: quantity({ value: job.adapter.millimetres, unit: 'mm' }),
          way: wayOf(job.adapter),
        }),
      ];

const DOUBTS = {
  'calibration-overdue': 'wrench-overdue',
  'calibration-unknown': 'wrench-undated',
  dropped: 'wrench-was-dropped',
} as const;

const doubtReplies = (job: Job, pass: TorquePass, now: Moment): readonly Reply[] =>
  doubtsOf(job, pass, now).map((doubt) => reply(DOUBTS[doubt], {}));
