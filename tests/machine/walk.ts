import { getAdjacencyMap } from 'xstate/graph';
import type { Job } from '../../src/core/job/job';
import { abstraction } from './abstraction';
import { type Attempt, attemptsAt, moment } from './attempts';
import { Driver, pathOf, type Sabotage, type Snapshot } from './driver';
import { forbidden } from './owed';
import type { Stretch } from './small-procedure';

export type Walked = { readonly job: Job; readonly node: string };

/** Every state the machine can reach from the beginning of a stretch by its own arrows, each write answered at once. */
export function walk({ procedure, before }: Stretch, limit: number, sabotage?: Sabotage) {
  const driver = new Driver(procedure, sabotage);
  const broken = new Set<string>();

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

  const step = (from: Snapshot, { command, now }: Attempt): Snapshot => {
    const { snapshot, entries } = driver.give(from, command, now);
    for (const what of forbidden(from.context.job, entries)) broken.add(what);
    return snapshot === from ? from : once(snapshot);
  };

  let edges = 0;
  // The graph walker knows machines, not logs, so it is given a logic of the same shape whose step includes the write.
  const map = getAdjacencyMap(
    {
      transition: (s: unknown, event: unknown) => step(s as Snapshot, event as Attempt),
      getInitialSnapshot: () => once(driver.begin(before, moment(0)).snapshot) as unknown,
      getPersistedSnapshot: (s: unknown) => s,
    } as never,
    {
      limit,
      serializeState: (s: unknown) => keys.get(s as Snapshot) ?? '',
      serializeEvent: () => String(++edges),
      events: ((s: unknown) =>
        attemptsAt((s as Snapshot).context.job).map((attempt) => ({ type: 'command.given', ...attempt }))) as never,
    },
  );
  const states = Object.values(map).map(({ state }: { state: unknown }): Walked => {
    const { context, value } = state as Snapshot;
    return { job: context.job, node: pathOf(value) };
  });
  return { states, edges, broken: [...broken] };
}
