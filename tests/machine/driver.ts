import { type AnyMachineSnapshot, createEmptyActor, initialTransition } from 'xstate';
import type { Command } from '../../src/core/job/command';
import type { Decision } from '../../src/core/job/decision';
import type { Entry, EntryBody, Moment } from '../../src/core/job/entry';
import { fold } from '../../src/core/job/evolve';
import type { Job } from '../../src/core/job/job';
import { planOf } from '../../src/core/job/plan';
import type { Procedure } from '../../src/core/procedure/procedure';
import { machineFor, type RepairContext, type RepairEvent, type WriteParams } from '../../src/machine/machine';

export type Snapshot = AnyMachineSnapshot & { readonly context: RepairContext };

/** What the machine did with a command: the next snapshot, and the entries it had written. */
export type Driven = { readonly snapshot: Snapshot; readonly entries: readonly Entry[] };

/** Entries written although the core refused: a guard taken away on purpose. */
export type Sabotage = (job: Job, c: Command) => readonly EntryBody[];

/** The machine of a procedure without its effects: every write succeeds at once, nothing is said. */
export class Driver {
  private readonly machine: ReturnType<typeof machineFor>;
  private write: WriteParams | undefined;
  private readonly scope: object;

  constructor(
    readonly procedure: Procedure,
    private readonly sabotage: Sabotage = () => [],
  ) {
    this.machine = machineFor(procedure);
    const self = createEmptyActor();
    // The pure `transition` of the library makes an actor for every event; one scope does for all of them.
    this.scope = {
      self,
      system: self.system,
      id: '',
      sessionId: '',
      logger: () => {},
      defer: () => {},
      stopChild: () => {},
      emit: () => {},
      actionExecutor: (action: { readonly type: string; readonly params: unknown }) => {
        if (action.type === 'write') this.write = action.params as WriteParams;
      },
    };
  }

  begin(before: readonly EntryBody[], now: Moment, people: readonly string[] = []): Driven {
    const entries = stamped([startOf(this.procedure, people), ...before], 0, now);
    const [snapshot] = initialTransition(this.machine, { job: fold(planOf(this.procedure), entries) });
    return { snapshot: snapshot as unknown as Snapshot, entries };
  }

  give(snapshot: Snapshot, command: Command, now: Moment): Driven {
    const asked = this.send(snapshot, { type: 'command.given', command, now });
    const decision = this.taken() ?? bare(this.sabotage(snapshot.context.job, command));
    return this.finish(snapshot, asked, decision, now);
  }

  /** Entries from outside words, such as a session that was opened. */
  report(snapshot: Snapshot, entries: readonly EntryBody[], now: Moment): Driven {
    const asked = this.send(snapshot, { type: 'work.reported', entries, replies: [] });
    return this.finish(snapshot, asked, this.taken() ?? bare([]), now);
  }

  /** What the last event had written, once. */
  private taken(): Decision | undefined {
    const decision = this.write?.decision;
    this.write = undefined;
    return decision;
  }

  private finish(before: Snapshot, asked: Snapshot, decision: Decision, now: Moment): Driven {
    if (decision.entries.length === 0) return { snapshot: before, entries: [] };
    const entries = stamped(decision.entries, before.context.job.last?.seq ?? 0, now);
    return { snapshot: this.send(asked, { type: 'log.written', entries, decision }), entries };
  }

  // The library types a scope for real actors only; this one never runs anything.
  private send(snapshot: Snapshot, event: RepairEvent): Snapshot {
    return this.machine.transition(snapshot as never, event, this.scope as never) as unknown as Snapshot;
  }
}

const bare = (entries: readonly EntryBody[]): Decision => ({ verdict: 'done', entries, replies: [], effects: [] });

const startOf = (procedure: Procedure, people: readonly string[]): EntryBody => ({
  kind: 'job-started',
  job: 'j',
  procedure: procedure.id,
  text: '',
  textHash: '',
  machine: '',
  people,
});

const stamped = (bodies: readonly EntryBody[], after: number, now: Moment): readonly Entry[] =>
  bodies.map((body, i): Entry => ({ ...body, ...now, seq: after + i + 1, who: 'a' }));

/** The state node as one path: `{ tighten: { a: 'work' } }` as `tighten.a.work`. */
export function pathOf(value: unknown): string {
  if (typeof value === 'string') return value;
  const [[key, inside]] = Object.entries(value as Record<string, unknown>) as [[string, unknown]];
  return `${key}.${pathOf(inside)}`;
}
