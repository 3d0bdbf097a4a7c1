import type { Entry } from '../job/entry';
import type { Job } from '../job/job';
import { passStatesOf, workPlace } from '../job/place';
import { stepIn } from '../job/plan';
import { boltsLeft, passState } from '../job/tightening';
import type { Head } from '../log/chain';
import { type JobStand, STAND_VERSION, type StandingAt } from '../log/job-stand';

/** Where a job stands whose log ends at `head`. */
export function standOf(job: Job, head: Head): JobStand {
  const [first] = job.entries;
  return {
    version: STAND_VERSION,
    head,
    at: standingAt(job),
    isPaused: job.paused && job.status !== 'closed',
    ends: job.ends.size,
    worked: (job.entries.findLast((entry) => !NO_WORK.has(entry.kind)) ?? first)?.at ?? 0,
    machine: first?.kind === 'job-started' ? first.machine : '',
  };
}

/** What the program writes by itself when a job is opened. */
const NO_WORK: ReadonlySet<Entry['kind']> = new Set(['session-opened', 'wrenches-owned', 'wrench-chosen']);

function standingAt(job: Job): StandingAt {
  if (job.status === 'closed') return { kind: 'closed' };
  const place = workPlace(job);
  if (place.kind !== 'step' && place.kind !== 'pass') return { kind: 'closing' };
  const { step, phase, passes } = stepIn(job.plan, place.step);
  const pass = place.kind === 'pass' ? passes.find(({ id }) => id === place.pass) : undefined;
  if (!pass) {
    const number = phase.steps.indexOf(step) + 1;
    return { kind: 'step', step: step.say, phase: phase.say, number, total: phase.steps.length };
  }
  const bolts = pass.order.length;
  const done = bolts - boltsLeft(pass, passState(passStatesOf(job, step.id), pass.id));
  return { kind: 'pass', step: step.say, number: passes.indexOf(pass) + 1, total: passes.length, done, bolts };
}
