import { type Command, command, type RuleName } from '../../core/job/command';
import { decide } from '../../core/job/decide/decide';
import type { Entry, EntryBody, Moment } from '../../core/job/entry';
import { evolve } from '../../core/job/evolve';
import { type Job, newJob } from '../../core/job/job';
import type { Plan } from '../../core/job/plan';

/** A job tried out without an ear, a voice or a store: every decision is written down at once. */
export type Trial = { readonly job: Job; readonly ms: number };

/** A second for each command is long enough to order them and too short for a quiet spell. */
const SECOND = 1000;

export const momentOf = ({ ms }: Trial): Moment => ({ at: ms, mono: ms, session: 'trial' });

export function beginTrial(plan: Plan): Trial {
  const { id, machine } = plan.procedure;
  return write({ job: newJob(plan), ms: 0 }, [
    { kind: 'job-started', job: 'trial', procedure: id, text: '', textHash: '', machine, people: [] },
    { kind: 'session-opened' },
  ]);
}

export const later = (trial: Trial, ms: number): Trial => ({ ...trial, ms: trial.ms + ms });

/** The trial after a command, or undefined where the job refuses it. */
export function give(trial: Trial, c: Command | RuleName): Trial | undefined {
  const then = later(trial, SECOND);
  const { verdict, entries } = decide(then.job, typeof c === 'string' ? command(c) : c, momentOf(then));
  return verdict === 'refused' ? undefined : write(then, entries);
}

/** All of them one after the other, or undefined as soon as one is refused. */
export const giveAll = (trial: Trial, commands: readonly (Command | RuleName)[]): Trial | undefined =>
  commands.reduce<Trial | undefined>((then, c) => then && give(then, c), trial);

function write(trial: Trial, bodies: readonly EntryBody[]): Trial {
  const job = bodies.reduce((j: Job, body) => {
    const entry: Entry = { ...body, ...momentOf(trial), seq: (j.last?.seq ?? 0) + 1, who: 'trial' };
    return evolve(j, entry);
  }, trial.job);
  return { ...trial, job };
}
