import { describe, expect, test } from 'vitest';
import { initialTransition, transition } from 'xstate';
import { command } from '../../src/core/job/command';
import type { Decision } from '../../src/core/job/decision';
import type { Entry } from '../../src/core/job/entry';
import { machineFor, type RepairEvent } from '../../src/machine/machine';
import { atFirstPass, bolt, setAt, type Workbench } from '../core/job/workbench';

/** The machine of a job as it stands, asked without running anything: what would it do? */
function asked(w: Workbench) {
  const machine = machineFor(w.procedure);
  let [snapshot] = initialTransition(machine, { job: w.job });
  const send = (event: RepairEvent) => {
    const [next, actions] = transition(machine, snapshot, event);
    snapshot = next;
    return actions.map(({ type, params }) => ({ type, params: params as unknown }));
  };
  return { send, job: () => snapshot.context.job, node: () => JSON.stringify(snapshot.value) };
}

const given = (w: Workbench, c: Parameters<Workbench['give']>[0]): RepairEvent => ({
  type: 'command.given',
  command: typeof c === 'string' ? command(c) : c,
  now: w.now(),
});

const types = (actions: readonly { readonly type: string }[]): readonly string[] => actions.map((a) => a.type);

function written(actions: readonly { readonly type: string; readonly params: unknown }[], w: Workbench): RepairEvent {
  const write = actions.find((a) => a.type === 'write');
  if (!write) throw new Error('nothing was to be written');
  const { decision } = write.params as { readonly decision: Decision };
  const from = w.entries.length;
  const entries = decision.entries.map((body, i): Entry => ({ ...body, ...w.now(), seq: from + i + 1, who: 'me' }));
  return { type: 'log.written', entries, decision };
}

describe('a command that changes the job', () => {
  test('is written first; only then is anything said, and the new place armed', () => {
    const w = atFirstPass();
    const m = asked(w);
    const before = m.job();
    const first = m.send(given(w, setAt(30)));
    expect(types(first)).toEqual(['write']);
    expect(m.job()).toBe(before);
    const then = m.send(written(first, w));
    expect(types(then)).toEqual(['perform', 'speak', 'arm']);
    expect(m.node()).toContain('work');
  });

  test('that could not be written changes nothing and says so', () => {
    const w = atFirstPass();
    const m = asked(w);
    const before = m.job();
    m.send(given(w, setAt(30)));
    expect(types(m.send({ type: 'log.failed' }))).toEqual(['sayNotSaved']);
    expect(m.job()).toBe(before);
    expect(types(m.send(given(w, setAt(30))))).toEqual(['write']);
  });
});

describe('while something is being written', () => {
  test('the next command is asked for again and not decided about', () => {
    const w = atFirstPass();
    const m = asked(w);
    m.send(given(w, setAt(30)));
    expect(types(m.send(given(w, bolt(1))))).toEqual(['askAgain']);
  });

  test('stop still stops', () => {
    const w = atFirstPass();
    const m = asked(w);
    m.send(given(w, setAt(30)));
    const actions = m.send(given(w, 'stop'));
    expect(types(actions)).toEqual(['perform', 'speak']);
    expect(actions[0]?.params).toEqual({ effects: ['hush'] });
  });
});

test('a question and a refusal write nothing and move nothing', () => {
  const w = atFirstPass();
  const m = asked(w);
  const [job, node] = [m.job(), m.node()];
  for (const c of ['tell-next', 'tell-torque', bolt(1), 'confirm', setAt(99)] as const)
    expect(types(m.send(given(w, c)))).toEqual(['perform', 'speak']);
  expect(m.job()).toBe(job);
  expect(m.node()).toBe(node);
});
