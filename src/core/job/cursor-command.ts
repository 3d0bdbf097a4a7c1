import { type Command, command, type RuleName } from './command';
import { passAt } from './decide/bolt';
import type { Job } from './job';
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
      const value =
        at?.pass.kind === 'torque' || at?.pass.kind === 'repeat'
          ? at.pass.target.value
          : at?.pass.kind === 'angle'
            ? at.pass.degrees
            : undefined;
      return value === undefined ? undefined : command(rule, { setting: { kind: 'reading', value, unit: null } });
    }
    default:
      return command(rule);
  }
}
