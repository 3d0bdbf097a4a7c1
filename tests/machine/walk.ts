import { type AnyMachineSnapshot, type EventObject, initialTransition, transition } from 'xstate';
import { getAdjacencyMap } from 'xstate/graph';
import { type Command, command, MANNERS, type RuleName } from '../../src/core/job/command';
import type { Decision } from '../../src/core/job/decision';
import type { Entry, EntryBody, Moment } from '../../src/core/job/entry';
import { fold } from '../../src/core/job/evolve';
import type { Job } from '../../src/core/job/job';
import { offersOf } from '../../src/core/job/offers';
import { cursorOf, passStatesOf, placeOf } from '../../src/core/job/place';
import { nodeOf, planOf } from '../../src/core/job/plan';
import { boltState, passState } from '../../src/core/job/tightening';
import type { SlotDomain, SlotValue } from '../../src/core/language/grammar';
import type { Procedure, Step } from '../../src/core/procedure/procedure';
import { machineFor, type RepairContext, type RepairEvent } from '../../src/machine/machine';

/** Long enough for every wait of every shipped procedure to be over. */
const MUCH_LATER = 400 * 24 * 3_600_000;

const moment = (mono: number): Moment => ({ at: mono, mono, session: 's' });

/** Patterns cut to three fasteners (two for passes over a subset), so that the walk stays finite and quick. */
export function cut(procedure: Procedure): Procedure {
  const cutStep = (step: Step): Step => {
    if (step.kind !== 'tighten' && step.kind !== 'slacken') return step;
    const all = Math.max(...step.passes.map((p) => p.order.length));
    const passes = step.passes.map((p) => ({ ...p, order: p.order.slice(0, p.order.length < all ? 2 : 3) }));
    return { ...step, passes };
  };
  return { ...procedure, phases: procedure.phases.map((p) => ({ ...p, steps: p.steps.map(cutStep) })) };
}

/** What a walk remembers of a state: place, cursor, question, debts by milestone and bolts by count. No log, ids or times. */
export function abstraction(job: Job): string {
  const place = placeOf(job);
  const tightening = [...job.tightening].map(([step, states]) =>
    [...states].map(([pass, s]) => {
      const kinds = [...s.bolts.values()].map((b) => (b.kind === 'done' && !b.inOrder ? 'astray' : b.kind)).sort();
      return `${step}/${pass}:${kinds}:${s.setting}:${s.marked}:${s.orderBroken}:${s.waited}`;
    }),
  );
  const ends = [...new Set([...job.ends.values()].map((e) => `${e.blocks}${e.why === 'dropped'}`))].sort();
  const readings = [...job.readings].map(([step, r]) => `${step}${r.size}`);
  return JSON.stringify([
    nodeOf(job.plan, place),
    cursorOf(job),
    job.pending?.kind ?? '',
    job.interrupted,
    ends,
    tightening,
    readings,
    [...job.answers],
    [...job.steps.values()].filter((s) => s === 'skipped').length,
  ]);
}

/** Commands worth trying here: everything offered with a legal and an edge slot, and the same with one that is illegal. */
function commandsAt(job: Job): readonly Command[] {
  const tried = new Map<string, Command>();
  const add = (c: Command) => tried.set(JSON.stringify(c), c);
  for (const offer of offersOf(job)) {
    if (MANNERS[offer.rule as RuleName] === 'harmless' || offer.rule === 'stop') continue;
    for (const slots of slotChoices(offer.slots, job)) add(command(offer.rule as RuleName, slots));
  }
  // Out of place on purpose: the machine must refuse them.
  for (const rule of ['done', 'confirm', 'close-job', 'skip-step'] as const) add(command(rule));
  add(command('bolt-done', { bolt: { kind: 'integer', value: 99 } }));
  return [...tried.values()];
}

function slotChoices(slots: Readonly<Record<string, SlotDomain>>, job: Job): readonly Record<string, SlotValue>[] {
  return Object.entries(slots).reduce<readonly Record<string, SlotValue>[]>(
    (done, [name, domain]) => done.flatMap((d) => valuesOf(domain, job).map((v) => ({ ...d, [name]: v }))),
    [{}],
  );
}

function valuesOf(domain: SlotDomain, job: Job): readonly SlotValue[] {
  switch (domain.kind) {
    case 'integers': {
      const cursor = Number(cursorOf(job));
      const picks = new Set([domain.values.includes(cursor) ? cursor : domain.values[0], domain.values.at(-1)]);
      return [...picks].flatMap((v) => (v === undefined ? [] : [{ kind: 'integer' as const, value: v }]));
    }
    case 'reading':
      return [settingNow(job) ?? domain.least, domain.most].map((value) => ({ kind: 'reading', value, unit: null }));
    case 'named':
      return domain.ids.slice(0, 1).map((id) => ({ kind: 'option', id }));
    case 'options':
      return domain.options.map(({ id }) => ({ kind: 'option', id }));
  }
}

function settingNow(job: Job): number | undefined {
  const place = placeOf(job);
  if (place.kind !== 'pass' || place.part !== 'set') return undefined;
  const pass = job.plan.steps.get(place.step)?.passes.find((p) => p.id === place.pass);
  if (pass?.kind === 'torque' || pass?.kind === 'repeat') return pass.target.value;
  return pass?.kind === 'angle' ? pass.degrees : undefined;
}

/** Entries written although the core refused: a guard taken away on purpose. */
export type Sabotage = (job: Job, c: Command) => readonly EntryBody[];

type Snapshot = AnyMachineSnapshot & { readonly context: RepairContext };
type Walked = { readonly job: Job; readonly node: string; readonly events: number; readonly broken: readonly string[] };

/** Every state the machine can reach, by its own arrows, with each write answered at once. */
export function walk(procedure: Procedure, limit: number, sabotage: Sabotage = () => []) {
  const small = cut(procedure);
  const machine = machineFor(small);
  const plan = planOf(small);
  const begin: readonly Entry[] = [
    {
      kind: 'job-started',
      job: 'j',
      procedure: small.id,
      text: '',
      textHash: '',
      machine: '',
      ...moment(0),
      seq: 1,
      who: 'a',
    },
  ];
  const [start] = initialTransition(machine, { job: fold(plan, begin) });
  const broken: string[] = [];

  const step = (snapshot: Snapshot, event: RepairEvent): Snapshot => {
    const [asked, actions] = transition(machine, snapshot as never, event);
    const write = actions.find((a) => a.type === 'write')?.params as { decision: Decision } | undefined;
    const now = event.type === 'command.given' ? event.now : moment(0);
    const before = snapshot.context.job;
    const bodies = write?.decision.entries ?? (event.type === 'command.given' ? sabotage(before, event.command) : []);
    if (bodies.length === 0) return asked as unknown as Snapshot;
    let seq = before.last?.seq ?? 0;
    const entries = bodies.map((body): Entry => ({ ...body, ...now, seq: ++seq, who: 'a' }));
    broken.push(...brokenBy(before, entries));
    const decision = write?.decision ?? { verdict: 'done', entries: bodies, replies: [], effects: [] };
    const held = write ? asked : ({ ...asked, context: { ...asked.context, writing: 1 } } as typeof asked);
    const [next] = transition(machine, held, { type: 'log.written', entries, decision });
    return next as unknown as Snapshot;
  };

  const logic = {
    transition: (snapshot: Snapshot, event: EventObject) => step(snapshot, event as unknown as RepairEvent),
    getInitialSnapshot: () => start as unknown as Snapshot,
    getPersistedSnapshot: (s: Snapshot) => s,
  };
  const map = getAdjacencyMap(logic as never, {
    limit,
    serializeState: (s: unknown) => abstraction((s as Snapshot).context.job),
    serializeEvent: (e: unknown) =>
      JSON.stringify([(e as { command: Command }).command, (e as { now: Moment }).now.mono]),
    events: ((s: unknown) => {
      const { job } = (s as Snapshot).context;
      const waits = job.timers.size > 0 ? [0, MUCH_LATER] : [0];
      return commandsAt(job).flatMap((c) =>
        waits.map((mono) => ({ type: 'command.given', command: c, now: moment(mono) })),
      );
    }) as never,
  });
  const states: Walked[] = Object.values(map).map((entry) => {
    const snapshot = (entry as { state: unknown }).state as Snapshot;
    const { job } = snapshot.context;
    return {
      job,
      node: pathOf(snapshot.value),
      events: Object.keys((entry as { transitions: object }).transitions).length,
      broken: [],
    };
  });
  return { states, edges: states.reduce((n, s) => n + s.events, 0), broken: [...new Set(broken)] };
}

/** `{ tighten: { a: 'work' } }` as `tighten.a.work`. */
export function pathOf(value: unknown): string {
  if (typeof value === 'string') return value;
  const [[key, inside]] = Object.entries(value as Record<string, unknown>) as [[string, unknown]];
  return `${key}.${pathOf(inside)}`;
}

/** Entries that no path may ever write, whatever the replies said. */
function brokenBy(before: Job, entries: readonly Entry[]): readonly string[] {
  return entries.flatMap((e) => {
    if (e.kind !== 'bolt-done') return [];
    const state = boltState(passState(passStatesOf(before, e.step), e.pass), e.bolt).kind;
    return state === 'held' || state === 'unknown' ? [`bolt done while ${state}`] : [];
  });
}

/** What is still owed in a job; a closed job must owe nothing. */
export function owed(job: Job): readonly string[] {
  const all: string[] = [...job.ends.values()].map((e) => `end ${e.what}`);
  for (const id of job.plan.order) {
    const planned = job.plan.steps.get(id);
    if (!planned) continue;
    const { step, passes } = planned;
    const leftOut = step.only && !step.only.answers.includes(job.answers.get(step.only.step) ?? '');
    if (leftOut) continue;
    if (!job.steps.has(id)) all.push(`step ${id}`);
    if (step.question && !job.answers.has(id)) all.push(`read-back ${id}`);
    for (const pass of passes) {
      const state = passState(passStatesOf(job, id), pass.id);
      if (pass.kind === 'wait' ? !state.waited : pass.order.some((n) => boltState(state, n).kind !== 'done'))
        all.push(`pass ${id}/${pass.id}`);
      if (state.orderBroken) all.push(`order ${id}/${pass.id}`);
    }
  }
  return all;
}
