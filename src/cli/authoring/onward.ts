import { convert } from '../../core/fastening/quantity';
import { type Command, command } from '../../core/job/command';
import { boltAt } from '../../core/job/decide/at-pass';
import { passAt } from '../../core/job/decide/bolt';
import { limitVerdict } from '../../core/job/limit';
import { nextReading, placeOf } from '../../core/job/place';
import { passIn, stepIn } from '../../core/job/plan';
import { expectedBolt, needsReading } from '../../core/job/tightening';
import { isTimeAsked } from '../../core/job/time-gate';
import { timeLeft } from '../../core/job/timer';
import type { Step } from '../../core/procedure/procedure';
import { give, giveAll, later, momentOf, type Trial } from './trial';

/** Which answer to give to the question of a step; a wrong one is never given on the way. */
export type Answers = ReadonlyMap<string, string>;

/** The trial one legal command further on the way through the job, or undefined at its end. */
export function onward(trial: Trial, answers: Answers): Trial | undefined {
  const { job } = trial;
  const place = placeOf(job);
  switch (place.kind) {
    case 'step':
      return onStep(trial, stepIn(job.plan, place.step).step, answers);
    case 'pass':
      switch (place.part) {
        case 'set':
          return give(trial, isTimeAsked(job) ? 'have-time' : settingOf(trial));
        case 'mark':
          return give(trial, 'all-marked');
        case 'work':
          return give(trial, isTimeAsked(job) ? 'have-time' : (floorCommand(trial) ?? boltCommand(trial)));
        case 'sort':
          return giveAll(trial, ['go-ahead-anyway', 'confirm']);
        case 'wait': {
          const pass = passIn(job.plan, place.step, place.pass);
          return give(pass.kind === 'wait' ? over(trial, [pass.timer]) : trial, 'done');
        }
      }
      return undefined;
    case 'closing':
      return giveAll(over(trial, [...job.timers.keys()]), ['close-job', 'confirm']);
    case 'paused':
    case 'closed':
      return undefined;
  }
}

function onStep(trial: Trial, step: Step, answers: Answers): Trial | undefined {
  const waited = over(trial, [...step.needsTimers, ...(step.kind === 'wait' ? [step.timer] : [])]);
  const right = step.question?.answers.filter((answer) => answer.right) ?? [];
  const chosen = right.find(({ id }) => id === answers.get(step.id)) ?? right[0];
  if (chosen) return give(waited, command('answer', { answer: { kind: 'option', id: chosen.id } }));
  const reading = readingCommand(waited, step, true);
  if (!reading) return give(waited, 'done');
  const taken = give(waited, reading);
  return taken?.job.pending ? give(taken, 'confirm') : taken;
}

/** Long enough for these timers, and for one that is yet to be started. */
function over(trial: Trial, timers: readonly string[]): Trial {
  const waits = timers.map((id) => {
    const timer = trial.job.timers.get(id);
    return timer ? timeLeft(timer, momentOf(trial)) : 0;
  });
  return later(trial, Math.max(0, ...waits));
}

/** A reading for the next place of a measuring step, inside its limit or outside it; undefined where there is none. */
export function readingCommand({ job }: Trial, step: Step, inside: boolean): Command | undefined {
  const spec = nextReading(job, step.id);
  if (step.kind !== 'measure' || !spec) return undefined;
  const limit = step.limit === undefined ? undefined : job.plan.procedure.limits.get(step.limit);
  const bounds = [limit?.least, limit?.most].flatMap((bound) => {
    const value = bound && convert(bound, spec.unit);
    return value?.ok ? [value.value] : [];
  });
  const round = (value: number): number => Number(value.toFixed(spec.decimals));
  const candidates = [...bounds, (spec.least + spec.most) / 2, spec.least, spec.most].map(round);
  const fits = (value: number): boolean => {
    const isPlausible = value >= spec.least && value <= spec.most;
    return isPlausible && (limitVerdict(job.plan.procedure, step, { value, unit: spec.unit }) !== false) === inside;
  };
  const value = candidates.find(fits) ?? (inside ? spec.least : undefined);
  return value === undefined ? undefined : command('measured', { reading: { kind: 'reading', value, unit: null } });
}

function settingOf({ job }: Trial): Command {
  const pass = passAt(job)?.pass;
  const value =
    pass?.kind === 'torque' || pass?.kind === 'repeat' ? pass.target.value : pass?.kind === 'angle' ? pass.degrees : 0;
  return command('set-at', { setting: { kind: 'reading', value, unit: null } });
}

export const boltDone = (bolt: number): Command => command('bolt-done', { bolt: { kind: 'integer', value: bolt } });

/** A torque over the floor of the pass, where it is still to be read. */
function floorCommand({ job }: Trial): Command | undefined {
  const at = boltAt(job);
  if (at?.pass.kind !== 'angle' || !at.pass.floor || !needsReading(at.pass, at.state, at.bolt)) return undefined;
  return command('measured', { reading: { kind: 'reading', value: Math.floor(at.pass.floor.value) + 1, unit: null } });
}

function boltCommand({ job }: Trial): Command {
  const at = passAt(job);
  return boltDone((at && expectedBolt(at.pass, at.state)) ?? 0);
}
