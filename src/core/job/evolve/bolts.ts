import type { RecoveryAction } from '../../procedure/procedure';
import { assertNever } from '../../result';
import { doubted } from '../doubt';
import type { BoltFault, Entry, UnknownWhy } from '../entry';
import type { Job } from '../job';
import { passStatesOf } from '../place';
import { passIn, stepIn } from '../plan';
import {
  type BoltState,
  boltState,
  type PassState,
  type PassStates,
  passState,
  reopened,
  sinceSlacken,
  withBolt,
  withPass,
} from '../tightening';
import { withoutTimers } from './ends';

type InPass = { readonly step: string; readonly pass: string };
type AtBolt = InPass & { readonly bolt: number };

const inPasses = (job: Job, step: string, change: (states: PassStates) => PassStates): Job => ({
  ...job,
  tightening: new Map(job.tightening).set(step, change(passStatesOf(job, step))),
});

export const inPass = (job: Job, at: InPass, change: Partial<PassState>): Job =>
  inPasses(job, at.step, (s) => withPass(s, at.pass, change));

const inBolt = (job: Job, at: AtBolt, to: BoltState): Job =>
  inPasses(job, at.step, (s) => withBolt(s, at.pass, at.bolt, to));

/** Done, and marked where the wrench that did it had been dropped. */
export function boltDone(job: Job, at: AtBolt, inOrder: boolean): Job {
  const { tool } = passIn(job.plan, at.step, at.pass);
  return inBolt(job, at, { kind: 'done', inOrder, doubtful: job.dropped.has(tool ?? '') });
}

export function torqueRead(job: Job, entry: Entry & { readonly kind: 'torque-read' }): Job {
  if (!entry.over) return job;
  const { read } = passState(passStatesOf(job, entry.step), entry.pass);
  return inPass(job, entry, { read: new Set(read).add(entry.bolt) });
}

export const boltTurned = (job: Job, at: AtBolt, degrees: number): Job => inBolt(job, at, { kind: 'partial', degrees });

export function boltUnknown(job: Job, at: AtBolt, why: UnknownWhy): Job {
  return inBolt(job, at, doubted(boltState(passState(passStatesOf(job, at.step), at.pass), at.bolt), why));
}

export function boltProved(
  job: Job,
  entry: Entry & { readonly kind: 'bolt-proved' | 'swing-proved' | 'bolt-settled' },
): Job {
  switch (entry.kind) {
    case 'swing-proved':
      return boltTurned(job, entry, entry.degrees);
    case 'bolt-proved':
      return entry.verdict === 'done' ? boltDone(job, entry, true) : inBolt(job, entry, { kind: 'open' });
    case 'bolt-settled':
      return entry.as === 'done' ? boltDone(job, entry, true) : inBolt(job, entry, { kind: 'open' });
  }
}

export function boltFault(job: Job, entry: Entry & { readonly kind: 'bolt-fault' }): Job {
  if (entry.action === 'note') return job;
  // A broken bolt is nowhere near done or open, whatever the rule: it waits for a new one or for all to be slack.
  const next =
    entry.fault === 'snapped' ? held(job, entry, 'snapped') : recovered(job, entry, entry.action, entry.fault);
  return { ...next, streak: 0, pending: null };
}

/** A new bolt has no passes behind it. Where no rule says from where it starts, it is held, or stays held as it was. */
export function boltReplaced(job: Job, entry: Entry & { readonly kind: 'bolt-replaced' }): Job {
  const before = boltState(passState(passStatesOf(job, entry.step), entry.pass), entry.bolt);
  return recovered(job, entry, entry.action, before.kind === 'held' ? before.fault : 'replaced');
}

const held = (job: Job, at: AtBolt, fault: BoltFault | 'replaced'): Job => inBolt(job, at, { kind: 'held', fault });

/** What the document says happens to a fastener after a fault; `hold` blocks until someone settles it. */
function recovered(job: Job, at: AtBolt, action: RecoveryAction | 'hold' | 'note', fault: BoltFault | 'replaced'): Job {
  switch (action) {
    case 'note':
      return job;
    case 'hold':
      return held(job, at, fault);
    case 'restart-all':
      // Blocked until the person reports that all are slack: the command for it starts every pass anew.
      return held(job, at, fault);
    case 'redo-bolt':
      return inBolt(job, at, { kind: 'open' });
    case 'accept':
      return boltDone(job, at, true);
    case 'restart-bolt': {
      const { passes } = stepIn(job.plan, at.step);
      const index = passes.findIndex((p) => p.id === at.pass);
      return inPasses(job, at.step, (s) => reopened(passes, s, sinceSlacken(passes, index), index, at.bolt));
    }
    case 'repeat-pass':
      return passRepeated(job, at);
    default:
      return assertNever(action);
  }
}

export function passRepeated(job: Job, { step, pass }: InPass): Job {
  const { passes } = stepIn(job.plan, step);
  const index = passes.findIndex((p) => p.id === pass);
  return { ...inPasses(job, step, (s) => reopened(passes, s, index, index)), streak: 0, pending: null };
}

/** All slack: every pass of the step begins again, and so does every wait between them. */
export function slackened(job: Job, step: string): Job {
  const { passes } = stepIn(job.plan, step);
  const waits = passes.flatMap((p) => (p.kind === 'wait' ? [p.timer] : []));
  const next = inPasses(job, step, (s) => reopened(passes, s, 0, passes.length - 1));
  const begun = new Set(job.begun);
  begun.delete(step);
  return { ...withoutTimers(next, waits), begun, streak: 0, pending: null };
}
