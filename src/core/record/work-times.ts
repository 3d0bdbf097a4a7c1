import { type Entry, isTalk } from '../job/entry';
import { evolve } from '../job/evolve';
import { type Job, newJob } from '../job/job';
import { workPlace } from '../job/place';
import { type Plan, stepIn } from '../job/plan';
import { netTime, type Stretch } from '../measuring/labour-time';
import { grouped } from './grouped';
import { runningFold } from './running-fold';

/** A stretch between two entries of one session: at which phase, by whom, at work or paused. */
export type WorkStretch = {
  readonly session: string;
  readonly phase: string;
  readonly who: string;
  /** Wall time at its start, to tell the day; its length is by the clock that never jumps. */
  readonly at: number;
  readonly isPaused: boolean;
  readonly stretch: Stretch;
};

/** How far the work has got: the job as it stands, and all of its stretches so far. */
export type Work = { readonly job: Job; readonly stretches: readonly WorkStretch[] };

type WorkSoFar = Work & { readonly stretches: WorkStretch[]; readonly phase: string; readonly last: Entry | null };

/**
 * The job cut at every entry. Between two sessions nobody was at work, whatever the clock on the wall says. What was
 * taken back was work all the same, so every entry counts here.
 */
export const workFold = (plan: Plan): ((entries: readonly Entry[]) => Work) =>
  runningFold<WorkSoFar>(() => {
    const job = newJob(plan);
    return { job, stretches: [], phase: phaseOf(job), last: null };
  }, further);

function further({ job, stretches, phase, last }: WorkSoFar, entry: Entry): WorkSoFar {
  if (last && last.session === entry.session) {
    stretches.push({
      session: entry.session,
      phase,
      who: last.who,
      at: last.at,
      isPaused: job.paused || job.status === 'closed',
      stretch: { from: last.mono, to: entry.mono },
    });
  }
  const next = evolve(job, entry);
  // Talk is half of a log and moves nothing; to find the place is slow.
  return { job: next, stretches, phase: isTalk(entry) ? phase : phaseOf(next), last: entry };
}

function phaseOf(job: Job): string {
  const place = workPlace(job);
  if (place.kind === 'step' || place.kind === 'pass') return stepIn(job.plan, place.step).phase.id;
  return job.plan.procedure.phases.at(-1)?.id ?? '';
}

/** Working time in ms, pauses left out, by whatever the stretches are told apart by. */
export function workedBy(
  stretches: readonly WorkStretch[],
  keyOf: (one: WorkStretch) => string,
): ReadonlyMap<string, number> {
  const worked = new Map<string, number>();
  const groups = grouped(stretches, (one) => `${keyOf(one)}\n${one.session}`);
  for (const group of groups.values()) {
    const [first] = group;
    if (!first) continue;
    const work = group.filter((one) => !one.isPaused).map((one) => one.stretch);
    const pauses = group.filter((one) => one.isPaused).map((one) => one.stretch);
    const key = keyOf(first);
    worked.set(key, (worked.get(key) ?? 0) + netTime(work, pauses));
  }
  return worked;
}

export type PhaseTime = {
  readonly phase: string;
  readonly say: string;
  readonly workedMs: number;
  readonly people: readonly { readonly who: string; readonly workedMs: number }[];
};

/** Working time of every phase that was entered, and each person's share of it. */
export function phaseTimes(plan: Plan, stretches: readonly WorkStretch[]): readonly PhaseTime[] {
  const whole = workedBy(stretches, (one) => one.phase);
  return plan.procedure.phases.flatMap(({ id, say }) => {
    const workedMs = whole.get(id);
    if (workedMs === undefined) return [];
    const mine = workedBy(
      stretches.filter((one) => one.phase === id),
      (one) => one.who,
    );
    const people = [...mine].map(([who, ms]) => ({ who, workedMs: ms }));
    return [{ phase: id, say, workedMs, people }];
  });
}
