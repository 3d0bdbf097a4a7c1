import { type Command, command } from '../../src/core/job/command';
import { boltAt, passAt } from '../../src/core/job/decide/at-pass';
import { canBeRefitted } from '../../src/core/job/decide/ends';
import { mayRepeat } from '../../src/core/job/decide/permission';
import type { Job } from '../../src/core/job/job';
import { markDegrees } from '../../src/core/job/marks';
import { blockersOf } from '../../src/core/job/milestone';
import { nextReading, placeOf } from '../../src/core/job/place';
import { stepIn } from '../../src/core/job/plan';
import { isTorque, settingOf } from '../../src/core/job/setting';
import { boltState, needsReading } from '../../src/core/job/tightening';
import { isTimeAsked } from '../../src/core/job/time-gate';
import type { SlotValue } from '../../src/core/language/grammar';

const integer = (value: number): SlotValue => ({ kind: 'integer', value });
const option = (id: string): SlotValue => ({ kind: 'option', id });
const reading = (value: number): SlotValue => ({ kind: 'reading', value, unit: null });

/** Which of several right answers is given: a finding sends the job down one of its branches. */
type Branch = 'first' | 'last';

/** What somebody who does everything right would say next. Followed from any state, it brings the job to its end. */
export function wayForward(job: Job, branch: Branch = 'first'): Command {
  if (job.pending) return command(job.pending.kind === 'turned-or-not' ? 'not-turned' : answerTo(job));
  const place = placeOf(job);
  switch (place.kind) {
    case 'paused':
      return command('im-back');
    case 'closing':
      return closeSomething(job) ?? command('close-job');
    case 'step':
      return stepForward(job, place.step, branch);
    case 'pass':
      return passForward(job);
    case 'closed':
      return command('stop');
  }
}

const answerTo = (job: Job) =>
  job.pending?.kind === 'out-of-order' || job.pending?.kind === 'which-bolt' ? 'cancel' : 'confirm';

function closeSomething(job: Job): Command | undefined {
  for (const [id, end] of job.ends) {
    if (end.why === 'dropped') return command('found-it');
    if (canBeRefitted(end)) return command('end-closed', { end: option(id) });
    if (end.why === 'wrench') return command('sign-off', { end: option(id), reason: option('tested-another-way') });
  }
  return undefined;
}

function stepForward(job: Job, id: string, branch: Branch): Command {
  const { step } = stepIn(job.plan, id);
  if (blockersOf(job, step).length > 0) return closeSomething(job) ?? command('done');
  const next = nextReading(job, id);
  if (next) return command('measured', { reading: reading(next.least) });
  const right = step.question?.answers.filter((a) => a.right).at(branch === 'first' ? 0 : -1);
  return right ? command('answer', { answer: option(right.id) }) : command('done');
}

function passForward(job: Job): Command {
  const at = passAt(job);
  if (!at) return command('stop');
  if (isTimeAsked(job)) return command('have-time');
  switch (at.part) {
    case 'set': {
      if (!isTorque(at.pass))
        return command('set-at', { setting: reading(at.pass.kind === 'angle' ? at.pass.degrees : 0) });
      const setting = settingOf(job, at.pass);
      return command('set-at', { setting: reading(setting.kind === 'set' ? setting.set.value : 0) });
    }
    case 'mark':
      return command('all-marked');
    case 'wait':
      return command('done');
    case 'sort':
      return command(
        at.pass.recovery['out-of-order']?.action === 'accept' || !mayRepeat(job, at)
          ? 'go-ahead-anyway'
          : 'repeat-pass',
      );
    case 'work':
      return boltForward(job);
  }
}

function boltForward(job: Job): Command {
  const at = boltAt(job);
  if (!at) return command('stop');
  // Anything held anywhere in the pass stops it sooner or later.
  if (at.pass.order.some((n) => boltState(at.state, n).kind === 'held'))
    return command(at.step.kind === 'slacken' ? 'go-ahead-anyway' : 'slacken-all');
  if (at.pass.kind === 'angle' && at.pass.floor && at.is.kind !== 'unknown' && needsReading(at.pass, at.state, at.bolt))
    return command('measured', { reading: reading(Math.floor(at.pass.floor.value) + 1) });
  if (at.is.kind !== 'unknown' || at.pass.kind === 'slacken') return command('bolt-done', { bolt: integer(at.bolt) });
  if (at.pass.kind !== 'angle') return command(mayRepeat(job, at) ? 'repeat-pass' : 'slacken-all');
  // What was not read in the turn cannot be read afterwards.
  if (needsReading(at.pass, at.state, at.bolt)) return command('slacken-all');
  const { before, after } = markDegrees(at.passes, at.passes.indexOf(at.pass));
  if ((after - before + 360) % 360 <= 30) return command('slacken-all');
  return command('mark-at', { clock: integer(Math.round(after / 30) % 12 || 12) });
}
