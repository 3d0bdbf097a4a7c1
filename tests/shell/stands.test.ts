import { describe, expect, test } from 'vitest';
import type { EntryBody } from '../../src/core/job/entry';
import type { ListedJob, LogStore } from '../../src/core/log/log-store';
import { JobStands } from '../../src/shell/job/stands';
import { sha256Hex } from '../../src/store/hash';
import { memoryStore } from '../../src/store/memory-store';
import { BEGUN, plateJob } from './plate-job';

const bolt = (n: number): EntryBody => ({
  kind: 'bolt-done',
  step: 'tighten-plate',
  pass: 'first',
  bolt: n,
  inOrder: true,
});
const TO_THE_PASS: readonly EntryBody[] = [
  ...BEGUN,
  { kind: 'step-done', step: 'clamp' },
  { kind: 'question-answered', step: 'corner', answer: 'top-handle', right: true },
  { kind: 'step-done', step: 'corner' },
  { kind: 'step-done', step: 'by-hand' },
  { kind: 'time-given', step: 'tighten-plate' },
  { kind: 'setting-confirmed', step: 'tighten-plate', pass: 'first', value: 15, unit: 'N·m' },
  bolt(1),
  { kind: 'end-opened', end: 'rag', what: 'the rag', blocks: 'hand-back', why: 'came-off' },
];

/** A store of so many jobs that counts which logs were read, as a machine after a start: nothing is known yet. */
async function machine(jobs: number, bodies: readonly EntryBody[] = TO_THE_PASS, maySave = true) {
  const store = memoryStore();
  const read: string[] = [];
  for (let n = 0; n < jobs; n++) await put(store, `j${n}`, bodies);
  const counted: LogStore = {
    ...store,
    read: (id) => {
      read.push(id);
      return store.read(id);
    },
  };
  const start = () => {
    let drawn = 0;
    const after = (_: number, run: () => void) => {
      queueMicrotask(run);
      return () => undefined;
    };
    const parts = { store: counted, hash: sha256Hex, language: 'en', after, maySave: () => maySave };
    const stands = new JobStands(parts, () => {
      drawn += 1;
    });
    return { stands, drawn: () => drawn };
  };
  return { store, read, start, rows: async () => listed(await store.jobs()) };
}

async function put(store: LogStore, id: string, bodies: readonly EntryBody[]): Promise<void> {
  const { card, texts } = plateJob(bodies);
  await store.createJob({ ...card, id });
  const sealed = texts.map((text) => {
    const { seq, prev, hash }: { seq: number; prev: string; hash: string } = JSON.parse(text);
    return { seq, prev, hash, text };
  });
  await store.append(id, 0, sealed, 'strict');
}

const listed = (jobs: Awaited<ReturnType<LogStore['jobs']>>): readonly ListedJob[] => (jobs.ok ? jobs.value : []);

const WHERE = {
  at: { kind: 'pass', number: 1, total: 3, done: 1, bolts: 3 },
  isPaused: false,
  ends: 1,
  machine: 'plate',
  worked: 1,
};

describe('where the jobs of a machine stand', () => {
  test('is worked out once for each, and kept with its card: no log is read again, nor after a start', async () => {
    const { read, start, rows } = await machine(20);
    const first = start();
    await first.stands.workOut(await rows());
    expect(read).toHaveLength(20);
    expect(first.drawn()).toBe(20);
    for (const row of await rows()) expect(first.stands.of(row)).toMatchObject(WHERE);
    await first.stands.workOut(await rows());
    const second = start();
    await second.stands.workOut(await rows());
    for (const row of await rows()) expect(second.stands.of(row)).toMatchObject(WHERE);
    expect(read).toHaveLength(20);
  });

  test('is worked out anew for the one job whose log went on without it, as after the browser was killed', async () => {
    const { store, read, start, rows } = await machine(3);
    await start().stands.workOut(await rows());
    const { texts } = plateJob([...TO_THE_PASS, bolt(2)]);
    const text = texts.at(-1) ?? '';
    const { seq, prev, hash } = JSON.parse(text);
    await store.append('j1', seq - 1, [{ seq, prev, hash, text }], 'strict');
    const { stands } = start();
    const stale = (await rows()).find(({ card }) => card.id === 'j1');
    // Before it is worked out nothing is told, rather than where it was.
    expect(stale && stands.of(stale)).toBeNull();
    read.length = 0;
    await stands.workOut(await rows());
    expect(read).toEqual(['j1']);
    const [one] = (await rows()).filter(({ card }) => card.id === 'j1');
    expect(one && stands.of(one)).toMatchObject({ at: { done: 2 } });
  });

  test('is not kept by a tab that may only read, and known there all the same', async () => {
    const { read, start, rows } = await machine(2, TO_THE_PASS, false);
    const { stands } = start();
    await stands.workOut(await rows());
    await stands.workOut(await rows());
    expect(read).toHaveLength(2);
    expect((await rows()).map(({ stand }) => stand)).toEqual([null, null]);
    for (const row of await rows()) expect(stands.of(row)).toMatchObject(WHERE);
  });

  test.each([
    { what: 'a job that is closed', bodies: [...BEGUN, { kind: 'closed' }], at: { kind: 'closed' }, isPaused: false },
    {
      what: 'a job on a break',
      bodies: [...BEGUN, { kind: 'paused', why: 'held' }],
      at: { kind: 'step', number: 1 },
      isPaused: true,
    },
  ] satisfies readonly { what: string; bodies: readonly EntryBody[]; at: object; isPaused: boolean }[])(
    'tells $what',
    async ({ bodies, at, isPaused }) => {
      const { start, rows } = await machine(1, bodies);
      const { stands } = start();
      await stands.workOut(await rows());
      const [row] = await rows();
      expect(row && stands.of(row)).toMatchObject({ at, isPaused });
    },
  );

  test('is not told of a damaged log, which is looked at once', async () => {
    const { read, start, rows } = await machine(1, [...BEGUN, { kind: 'step-done', step: 'nowhere' }]);
    const { stands } = start();
    await stands.workOut(await rows());
    await stands.workOut(await rows());
    expect(read).toHaveLength(1);
    const [row] = await rows();
    expect(row && stands.of(row)).toBeNull();
  });
});
