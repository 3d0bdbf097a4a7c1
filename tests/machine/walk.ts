import { type AnyMachineSnapshot, initialTransition } from 'xstate';
import { getAdjacencyMap } from 'xstate/graph';
import type { Command } from '../../src/core/job/command';
import type { Decision } from '../../src/core/job/decision';
import type { Entry, EntryBody } from '../../src/core/job/entry';
import { fold } from '../../src/core/job/evolve';
import type { Job } from '../../src/core/job/job';
import { planOf } from '../../src/core/job/plan';
import { machineFor, type RepairContext, type RepairEvent, type WriteParams } from '../../src/machine/machine';
import { abstraction } from './abstraction';
import { type Attempt, attemptsAt, moment } from './attempts';
import { forbidden } from './owed';
import type { Stretch } from './small-procedure';

/** Entries written although the core refused: a guard taken away on purpose. */
export type Sabotage = (job: Job, c: Command) => readonly EntryBody[];

export type Walked = { readonly job: Job; readonly node: string };

type Snapshot = AnyMachineSnapshot & { readonly context: RepairContext };
// Only what is asked for is typed here: the walker's own types are for machines whose every action is known.
type Given = RepairEvent & { readonly type: 'command.given' };

/** Every state the machine can reach from the beginning of a stretch by its own arrows, each write answered at once. */
export function walk({ procedure, before }: Stretch, limit: number, sabotage: Sabotage = () => []) {
  const machine = machineFor(procedure);
  const first: EntryBody = {
    kind: 'job-started',
    job: 'j',
    procedure: procedure.id,
    text: '',
    textHash: '',
    machine: '',
  };
  const begin = [first, ...before].map((body, i): Entry => ({ ...body, ...moment(0), seq: i + 1, who: 'a' }));
  const [start] = initialTransition(machine, { job: fold(planOf(procedure), begin) });
  const broken = new Set<string>();

  const next = (snapshot: Snapshot, event: Given, scope: object): Snapshot => {
    let write: WriteParams | undefined;
    const watching = {
      ...scope,
      actionExecutor: (action: { readonly type: string; readonly params: unknown }) => {
        if (action.type === 'write') write = action.params as WriteParams;
      },
    };
    const asked = machine.transition(snapshot as never, event, watching as never);
    const job = snapshot.context.job;
    const bodies = write?.decision.entries ?? sabotage(job, event.command);
    if (bodies.length === 0) return snapshot;
    let seq = job.last?.seq ?? 0;
    const entries = bodies.map((body): Entry => ({ ...body, ...event.now, seq: ++seq, who: 'a' }));
    for (const what of forbidden(job, entries)) broken.add(what);
    const decision: Decision = write?.decision ?? { verdict: 'done', entries: bodies, replies: [], effects: [] };
    const written = machine.transition(asked, { type: 'log.written', entries, decision }, scope as never);
    return once(written as unknown as Snapshot);
  };

  // One snapshot is kept for each abstraction; the many others that come to the same are let go.
  const seen = new Map<string, Snapshot>();
  const keys = new WeakMap<Snapshot, string>();
  const once = (snapshot: Snapshot): Snapshot => {
    const key = abstraction(snapshot.context.job);
    const first = seen.get(key) ?? snapshot;
    seen.set(key, first);
    keys.set(first, key);
    return first;
  };

  let edges = 0;
  // The graph walker knows machines, not logs, so it is given a logic of the same shape whose step includes the write.
  const map = getAdjacencyMap(
    {
      transition: (s: unknown, event: unknown, scope: object) => next(s as Snapshot, event as Given, scope),
      getInitialSnapshot: () => once(start as unknown as Snapshot) as unknown,
      getPersistedSnapshot: (s: unknown) => s,
    } as never,
    {
      limit,
      serializeState: (s: unknown) => keys.get(s as Snapshot) ?? '',
      serializeEvent: () => String(++edges),
      events: ((s: unknown) =>
        attemptsAt((s as Snapshot).context.job).map((attempt: Attempt) => ({
          type: 'command.given',
          ...attempt,
        }))) as never,
    },
  );
  const states = Object.values(map).map(({ state }: { state: unknown }): Walked => {
    const { context, value } = state as Snapshot;
    return { job: context.job, node: pathOf(value) };
  });
  return { states, edges, broken: [...broken] };
}

/** `{ tighten: { a: 'work' } }` as `tighten.a.work`. */
export function pathOf(value: unknown): string {
  if (typeof value === 'string') return value;
  const [[key, inside]] = Object.entries(value as Record<string, unknown>) as [[string, unknown]];
  return `${key}.${pathOf(inside)}`;
}
