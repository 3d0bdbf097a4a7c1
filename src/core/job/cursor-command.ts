import { type Command, command, type RuleName } from './command';
import { passAt } from './decide/at-pass';
import type { Job } from './job';
import { isTorque, settingOf } from './setting';
import { expectedBolt } from './tightening';

/** The command a button stands for at this place: its number is the one the screen shows. */
export function commandAtCursor(job: Job, rule: RuleName): Command | undefined {
  const at = passAt(job);
  switch (rule) {
    case 'bolt-done': {
      const bolt = at ? expectedBolt(at.pass, at.state) : undefined;
      return bolt === undefined ? undefined : command(rule, { bolt: { kind: 'integer', value: bolt } });
    }
    case 'set-at': {
      const value = settingNow(job);
      return value === undefined ? undefined : command(rule, { setting: { kind: 'reading', value, unit: null } });
    }
    default:
      return command(rule);
  }
}

/** The number the wrench is to be set at here; none where this wrench cannot be. */
function settingNow(job: Job): number | undefined {
  const at = passAt(job);
  if (!at) return undefined;
  if (at.pass.kind === 'angle') return at.pass.degrees;
  if (!isTorque(at.pass)) return undefined;
  const setting = settingOf(job, at.pass);
  return setting.kind === 'set' ? setting.set.value : undefined;
}
