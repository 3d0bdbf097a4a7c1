import { boltInDoubt, doubted } from '../doubt';
import type { Entry } from '../entry';
import { type Job, newJob } from '../job';
import { passStatesOf } from '../place';
import { boltState, type PassStates, passState, withBolt } from '../tightening';
import { carryOver } from '../timer';
import { boltUnknown } from './bolts';
import { foldOnto, marksBefore } from './past';

/**
 * Opening a session ends questions, breaks the rhythm and carries every timer over. Whatever ended the one before, the
 * bolt of an angle pass that was being worked is in doubt now: nobody saw whether it was turned.
 */
export function opened(job: Job, entry: Entry): Job {
  const { last } = job;
  const timers = new Map([...job.timers].map(([id, t]) => [id, last ? carryOver(t, last, entry) : t] as const));
  const interrupted = last !== null && last.kind !== 'job-started';
  const doubt = boltInDoubt(job);
  const next = doubt ? boltUnknown(job, doubt, 'interrupted') : job;
  return { ...next, timers, pending: null, interrupted, streak: 0 };
}

type Apply = (job: Job, entry: Entry) => Job;

/** The log without the entry that was taken back. What was in doubt before stays in doubt: a word does not prove a bolt. */
export function undone(job: Job, entry: Entry & { readonly kind: 'undone' }, apply: Apply): Job {
  const taken = new Set(job.undone).add(entry.target);
  const { kept, mark } = marksBefore(job.past, entry.target);
  const since = job.entries.slice(mark?.count ?? 0).filter((e) => !taken.has(e.seq));
  const again = foldOnto(mark?.job ?? newJob(job.plan), since, job.past, apply);
  const target = job.entries.find((e) => e.seq === entry.target);
  return {
    ...again,
    tightening: withDoubts(job, again, target),
    undone: taken,
    pending: null,
    streak: 0,
    interrupted: job.interrupted,
    attempt: job.attempt,
    past: { ...job.past, marks: kept, alone: again },
  };
}

/**
 * Which bolt a new session put in doubt is worked out from what had been done until then, so taking that back would
 * move the doubt to another bolt. It stays where it was, unless it is the doubt itself that was taken back.
 */
function withDoubts(before: Job, again: Job, target: Entry | undefined): ReadonlyMap<string, PassStates> {
  const tightening = new Map(again.tightening);
  for (const [step, states] of before.tightening)
    for (const [pass, state] of states)
      for (const [bolt, was] of state.bolts) {
        const isTaken = target?.kind === 'bolt-unknown' && target.bolt === bolt && target.pass === pass;
        if (was.kind !== 'unknown' || isTaken) continue;
        const now = tightening.get(step) ?? passStatesOf(again, step);
        const is = boltState(passState(now, pass), bolt);
        if (is.kind === 'open' || is.kind === 'partial')
          tightening.set(step, withBolt(now, pass, bolt, doubted(was, was.why)));
      }
  return tightening;
}
