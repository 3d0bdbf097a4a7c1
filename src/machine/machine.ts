import { assign, type StateNodeConfig, setup } from 'xstate';
import type { Command } from '../core/job/command';
import { decide } from '../core/job/decide/decide';
import type { Decision, Effect } from '../core/job/decision';
import type { Entry, EntryBody, Moment } from '../core/job/entry';
import { evolve } from '../core/job/evolve';
import type { Job } from '../core/job/job';
import { placeOf } from '../core/job/place';
import { nodeOf, planOf } from '../core/job/plan';
import type { Reply } from '../core/phrasing/reply';
import type { Procedure } from '../core/procedure/procedure';
import { leavesOf, type Node, nodesOf } from './nodes';

/** The job, and how many writes are under way. All that must survive is in the log the job is folded from. */
export type RepairContext = { readonly job: Job; readonly writing: number };

export type RepairEvent =
  | { readonly type: 'command.given'; readonly command: Command; readonly now: Moment }
  /** Something that happened outside words: a note recorded, a picture taken, a session opened. */
  | { readonly type: 'work.reported'; readonly entries: readonly EntryBody[]; readonly replies: readonly Reply[] }
  /** The entries are durable. Only now may anything be confirmed. */
  | { readonly type: 'log.written'; readonly entries: readonly Entry[]; readonly decision: Decision }
  | { readonly type: 'log.failed' }
  /** What had been refused is stored after all: the job is what the log says, and no longer what it was without it. */
  | { readonly type: 'log.caught-up'; readonly job: Job };

/** Writes the entries, then answers with `log.written` and the same decision, or with `log.failed`. */
export type WriteParams = { readonly decision: Decision };
export type SpeakParams = { readonly replies: readonly Reply[]; readonly verdict: Decision['verdict'] };
/** The job as it now is: the machine's own snapshot still shows the one before while its actions run. */
export type ArmParams = { readonly job: Job };
export type PerformParams = { readonly effects: readonly Effect[] };

const base = setup({
  types: {
    context: {} as RepairContext,
    events: {} as RepairEvent,
    input: {} as { readonly job: Job },
  },
  // Effects are named here and done by whoever provides them; the machine itself does nothing outside.
  actions: {
    write: (_, _params: WriteParams) => {},
    speak: (_, _params: SpeakParams) => {},
    perform: (_, _params: PerformParams) => {},
    arm: (_, _params: ArmParams) => {},
    sayNotSaved: () => {},
    askAgain: () => {},
    countWrite: assign({ writing: ({ context }) => context.writing + 1 }),
  },
  guards: {
    // A write under way holds up everything but "stop", which waits for no disk.
    mustWait: ({ context, event }) =>
      context.writing > 0 && !(event.type === 'command.given' && event.command.rule === 'stop'),
    changesTheJob: ({ context, event }) => decided(context, event).entries.length > 0,
    isPlacedAt: ({ context }, params: { readonly node: string }) => placeNode(context.job) === params.node,
    leadsTo: ({ context, event }, params: { readonly node: string }) =>
      placeNode(written(context, event)) === params.node,
  },
});

type States = Record<
  string,
  StateNodeConfig<RepairContext, RepairEvent, never, never, never, never, never, never, never, never>
>;

/**
 * The procedure as a state machine: phases and steps are states, a tightening holds its passes, and every arrow is
 * guarded by what the core says the log now means. Undo, resume and hand-over therefore use the same arrows as work.
 */
export function machineFor(procedure: Procedure) {
  const nodes = nodesOf(planOf(procedure));
  const leaves = leavesOf(nodes);
  return base.createMachine({
    id: procedure.id,
    context: ({ input }) => ({ job: input.job, writing: 0 }),
    initial: 'arriving',
    states: {
      arriving: {
        always: leaves.map((leaf) => ({
          guard: { type: 'isPlacedAt', params: { node: leaf.id } },
          target: targetOf(leaf),
        })),
      },
      ...statesOf(nodes),
    },
    on: {
      'command.given': [
        { guard: 'mustWait', actions: 'askAgain' },
        {
          guard: 'changesTheJob',
          actions: [
            { type: 'write', params: ({ context, event }) => ({ decision: decided(context, event) }) },
            'countWrite',
          ],
        },
        {
          actions: [
            { type: 'perform', params: ({ context, event }) => ({ effects: decided(context, event).effects }) },
            { type: 'speak', params: ({ context, event }) => decided(context, event) },
          ],
        },
      ],
      'work.reported': {
        actions: [{ type: 'write', params: ({ event }) => ({ decision: reported(event) }) }, 'countWrite'],
      },
      'log.written': leaves.map((leaf) => ({
        guard: { type: 'leadsTo', params: { node: leaf.id } },
        target: targetOf(leaf),
        actions: [
          { type: 'perform', params: ({ event }) => event.decision },
          { type: 'speak', params: ({ event }) => event.decision },
          assign({
            job: ({ context, event }) => written(context, event),
            writing: ({ context }) => context.writing - 1,
          }),
          { type: 'arm', params: ({ context }) => ({ job: context.job }) },
        ],
      })),
      'log.caught-up': leaves.map((leaf) => ({
        guard: { type: 'leadsTo', params: { node: leaf.id } },
        target: targetOf(leaf),
        actions: [
          assign({ job: ({ event }) => event.job }),
          { type: 'arm', params: ({ context }) => ({ job: context.job }) },
        ],
      })),
      'log.failed': { actions: [assign({ writing: ({ context }) => context.writing - 1 }), 'sayNotSaved'] },
    },
  });
}

export type RepairMachine = ReturnType<typeof machineFor>;

// XState splits targets at dots, so ids carry slashes instead.
const idOf = (node: Node): string => node.id.replaceAll('.', '/');
const targetOf = (node: Node): `#${string}` => `#${idOf(node)}`;

function statesOf(nodes: readonly Node[]): States {
  return Object.fromEntries(
    nodes.map((node) => {
      const [first] = node.inside;
      const config = first ? { id: idOf(node), initial: first.key, states: statesOf(node.inside) } : { id: idOf(node) };
      return [node.key, config];
    }),
  );
}

// Every arrow out of a place asks where the job now is; it is worked out once.
const placed = new WeakMap<Job, string>();

function placeNode(job: Job): string {
  const node = placed.get(job) ?? nodeOf(job.plan, placeOf(job));
  placed.set(job, node);
  return node;
}

// A guard and its action ask the same pure question; the answer is kept with the event and the job it was asked about.
type Answer<T> = { readonly about: Job; readonly answer: T };
const decisions = new WeakMap<RepairEvent, Answer<Decision>>();
const jobs = new WeakMap<RepairEvent, Answer<Job>>();

const NOTHING: Decision = { verdict: 'refused', entries: [], replies: [], effects: [] };

function decided(context: RepairContext, event: RepairEvent): Decision {
  if (event.type !== 'command.given') return NOTHING;
  const known = decisions.get(event);
  if (known?.about === context.job) return known.answer;
  const answer = decide(context.job, event.command, event.now);
  decisions.set(event, { about: context.job, answer });
  return answer;
}

function written(context: RepairContext, event: RepairEvent): Job {
  if (event.type === 'log.caught-up') return event.job;
  if (event.type !== 'log.written') return context.job;
  const known = jobs.get(event);
  if (known?.about === context.job) return known.answer;
  const answer = event.entries.reduce(evolve, context.job);
  jobs.set(event, { about: context.job, answer });
  return answer;
}

const reported = (event: RepairEvent & { readonly type: 'work.reported' }): Decision => ({
  verdict: 'done',
  entries: event.entries,
  replies: event.replies,
  effects: [],
});
