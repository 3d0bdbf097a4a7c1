import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { verifyChain } from '../../src/core/log/chain';
import type { SealedText } from '../../src/core/log/envelope';
import type { Durability, StoreFault } from '../../src/core/log/log-store';
import { fail, ok, type Result } from '../../src/core/result';
import { LogWriter, type WriterEvent } from '../../src/store/log-writer';
import { memoryStore } from '../../src/store/memory-store';
import { nodeHash, type SampleBody } from '../core/log/sample-log';

const MOMENT = { at: 1, mono: 1, session: 's1', who: 'Mechanic' };
const done = (bolt: number): SampleBody => ({ kind: 'bolt-done', step: 's', bolt });
const heard: SampleBody = { kind: 'heard', words: 'what torque', score: 0.8 };
const durability = (body: SampleBody): Durability => (body.kind === 'heard' ? 'relaxed' : 'strict');
const FULL: StoreFault = { code: 'storage-full', detail: 'no room' };

/** Lets every promise that can go on do so. */
const settled = () => new Promise((resolve) => setImmediate(resolve));

type Batch = { readonly expectedSeq: number; readonly seqs: readonly number[]; readonly durability: Durability };

/** A bench for one writer: a store that logs its batches, can be held back or made to fail, and timers run by hand. */
async function bench() {
  const store = memoryStore();
  await store.createJob({ id: 'a', title: 'A', procedure: 'p', created: 1, who: 'm', closed: false });
  const batches: Batch[] = [];
  const timers = new Map<object, { readonly ms: number; readonly run: () => void }>();
  const control: { fault: StoreFault | null; gate: Promise<void>; lost: boolean } = {
    fault: null,
    gate: Promise.resolve(),
    lost: false,
  };
  const append = async (
    jobId: string,
    expectedSeq: number,
    entries: readonly SealedText[],
    how: Durability,
  ): Promise<Result<void, StoreFault>> => {
    batches.push({ expectedSeq, seqs: entries.map(({ seq }) => seq), durability: how });
    await control.gate;
    if (control.fault) return fail(control.fault);
    const result = await store.append(jobId, expectedSeq, entries, how);
    return control.lost ? fail({ code: 'storage-failed', detail: 'connection lost' }) : result;
  };
  const events: WriterEvent[] = [];
  const open = (start: { texts?: readonly string[]; head?: { seq: number; hash: string } } = {}) => {
    const writer = new LogWriter<SampleBody>({
      store: { append },
      hash: nodeHash,
      after: (ms, run) => {
        const key = {};
        timers.set(key, { ms, run });
        return () => timers.delete(key);
      },
      durability,
      jobId: 'a',
      ...start,
    });
    writer.on((event) => events.push(event));
    return writer;
  };
  const tick = async () => {
    const due = [...timers.values()];
    timers.clear();
    for (const { run } of due) run();
    await settled();
  };
  const stored = async () => {
    const job = await store.read('a');
    return job.ok ? job.value.texts : [];
  };
  return { store, batches, timers, control, events, open, tick, stored };
}

describe('the order of entries', () => {
  test('is that in which they were recorded, chained, whatever waits for what', async () => {
    const kinds = fc.array(fc.record({ strict: fc.boolean(), pause: fc.boolean() }), { minLength: 1, maxLength: 30 });
    await fc.assert(
      fc.asyncProperty(kinds, async (steps) => {
        const { open, stored } = await bench();
        const writer = open();
        for (const [at, { strict, pause }] of steps.entries()) {
          writer.record([strict ? done(at) : heard], MOMENT);
          if (pause) await settled();
        }
        expect(await writer.flush()).toEqual(ok(undefined));
        const texts = await stored();
        expect(texts).toEqual(writer.texts());
        expect(verifyChain(texts, nodeHash, writer.head()).ok).toBe(true);
        expect(texts).toHaveLength(steps.length);
      }),
      { numRuns: 50 },
    );
  });

  test('goes on from a log that is there already', async () => {
    const { open, stored } = await bench();
    const first = open();
    await first.record([done(1), done(2)], MOMENT).written;
    const second = open({ texts: first.texts(), head: first.head() });
    const { entries, written } = second.record([done(3)], MOMENT);
    expect(entries[0]).toMatchObject({ seq: 3, prev: first.head().hash, kind: 'bolt-done', bolt: 3 });
    expect(await written).toEqual(ok(undefined));
    expect(await stored()).toHaveLength(3);
  });

  test('a body that cannot be written is a bug, and leaves none of its fellows behind', async () => {
    const { open } = await bench();
    const writer = open();
    expect(() => writer.record([done(1), done(Number.NaN)], MOMENT)).toThrow('not-finite');
    expect(writer.texts()).toEqual([]);
    expect(writer.head().seq).toBe(0);
  });
});

describe('what is written when', () => {
  test('talk waits for the next state entry and goes in the same strict batch', async () => {
    const { open, batches } = await bench();
    const writer = open();
    const talk = writer.record([heard], MOMENT);
    await settled();
    expect(batches).toEqual([]);
    const state = writer.record([heard, done(1), heard], MOMENT);
    expect(await state.written).toEqual(ok(undefined));
    expect(await talk.written).toEqual(ok(undefined));
    expect(batches).toEqual([{ expectedSeq: 0, seqs: [1, 2, 3, 4], durability: 'strict' }]);
  });

  test('talk alone is written relaxed after a second', async () => {
    const { open, batches, timers, tick } = await bench();
    const writer = open();
    writer.record([heard], MOMENT);
    writer.record([heard], MOMENT);
    expect([...timers.values()].map(({ ms }) => ms)).toEqual([1000]);
    await tick();
    expect(batches).toEqual([{ expectedSeq: 0, seqs: [1, 2], durability: 'relaxed' }]);
    expect(timers.size).toBe(0);
  });

  test('a flush writes what waits at once and strictly', async () => {
    const { open, batches, timers } = await bench();
    const writer = open();
    writer.record([heard], MOMENT);
    expect(await writer.flush()).toEqual(ok(undefined));
    expect(batches).toEqual([{ expectedSeq: 0, seqs: [1], durability: 'strict' }]);
    expect(timers.size).toBe(0);
    expect(await writer.flush()).toEqual(ok(undefined));
    expect(batches).toHaveLength(1);
  });

  test('one batch at a time: what comes meanwhile goes together in the next', async () => {
    const { open, batches, control } = await bench();
    const writer = open();
    let release = () => {};
    control.gate = new Promise((resolve) => {
      release = resolve;
    });
    const first = writer.record([done(1)], MOMENT);
    const second = writer.record([heard], MOMENT);
    const third = writer.record([done(2)], MOMENT);
    let confirmed = false;
    void third.written.then(() => {
      confirmed = true;
    });
    await settled();
    expect(batches).toHaveLength(1);
    expect(confirmed).toBe(false);
    release();
    await Promise.all([first.written, second.written, third.written]);
    expect(batches.map(({ seqs }) => seqs)).toEqual([[1], [2, 3]]);
  });

  test('a closed writer has written everything and leaves no timer', async () => {
    const { open, timers, stored } = await bench();
    const writer = open();
    writer.record([heard], MOMENT);
    expect(await writer.close()).toEqual(ok(undefined));
    expect(await stored()).toHaveLength(1);
    expect(timers.size).toBe(0);
  });
});

describe('when storing fails', () => {
  test('nothing is confirmed, nothing is lost, and the whole log can still be had', async () => {
    const { open, control, events, stored } = await bench();
    const writer = open();
    await writer.record([done(1)], MOMENT).written;
    control.fault = FULL;
    expect(await writer.record([done(2)], MOMENT).written).toEqual(fail(FULL));
    expect(await writer.record([heard, done(3)], MOMENT).written).toEqual(fail(FULL));
    expect(await stored()).toHaveLength(1);
    expect(verifyChain(writer.texts(), nodeHash, writer.head())).toMatchObject({ ok: true, value: { length: 4 } });
    expect(writer.fault()).toEqual(FULL);
    await settled();
    expect(events.filter(({ type }) => type === 'fault')).toEqual([{ type: 'fault', fault: FULL, waiting: 1 }]);
  });

  type Bench = Awaited<ReturnType<typeof bench>>;
  type Act = (writer: LogWriter<SampleBody>, at: Bench) => Promise<unknown>;
  test.each<[string, Act]>([
    ['the next state entry', (writer) => writer.record([done(3)], MOMENT).written],
    ['a flush', (writer) => writer.flush()],
    ['a timer', (_, { tick }) => tick()],
  ])('%s tries again from the first entry missing', async (_, act) => {
    const b = await bench();
    const writer = b.open();
    b.control.fault = FULL;
    await writer.record([heard], MOMENT);
    await writer.record([done(1)], MOMENT).written;
    await settled();
    expect([...b.timers.values()].map(({ ms }) => ms)).toEqual([5000]);
    b.control.fault = null;
    await act(writer, b);
    await settled();
    expect(b.batches.at(-1)).toMatchObject({ expectedSeq: 0, durability: 'strict' });
    expect(await b.stored()).toEqual(writer.texts());
    expect(writer.fault()).toBeNull();
    expect(b.events.map(({ type }) => type)).toEqual(['fault', 'written', 'recovered']);
    expect(b.timers.size).toBe(0);
  });

  test('a closed writer does not go on trying', async () => {
    const { open, control, timers } = await bench();
    const writer = open();
    control.fault = FULL;
    writer.record([done(1)], MOMENT);
    expect(await writer.close()).toEqual(fail(FULL));
    await settled();
    expect(timers.size).toBe(0);
  });

  test('a batch that was stored although the word of it was lost is not stored twice', async () => {
    const { open, control, stored } = await bench();
    const writer = open();
    control.lost = true;
    const first = await writer.record([done(1), done(2)], MOMENT).written;
    expect(!first.ok && first.error.code).toBe('storage-failed');
    control.lost = false;
    expect(await writer.record([done(3)], MOMENT).written).toEqual(ok(undefined));
    expect(await stored()).toEqual(writer.texts());
  });

  test('a log that another has gone on with ends this writer, with its entries kept for export', async () => {
    const { open, store, batches, timers, tick } = await bench();
    const writer = open();
    const other = open();
    await other.record([done(9)], MOMENT).written;
    const refused = await writer.record([done(1)], MOMENT).written;
    expect(refused).toMatchObject({ ok: false, error: { code: 'conflict', expected: { seq: 0 }, actual: { seq: 1 } } });
    const tries = batches.length;
    expect(await writer.record([done(2)], MOMENT).written).toEqual(refused);
    expect(await writer.flush()).toEqual(refused);
    await tick();
    expect(batches).toHaveLength(tries);
    expect(timers.size).toBe(0);
    expect(writer.texts()).toHaveLength(2);
    const job = await store.read('a');
    expect(job.ok && job.value.texts).toEqual(other.texts());
  });

  test('a listener that throws does not stop the log', async () => {
    const { open, stored } = await bench();
    const writer = open();
    const thrown: unknown[] = [];
    const onError = (error: unknown) => thrown.push(error);
    process.once('uncaughtException', onError);
    const off = writer.on(() => {
      throw new Error('a screen that broke');
    });
    await writer.record([done(1)], MOMENT).written;
    off();
    expect(await writer.record([done(2)], MOMENT).written).toEqual(ok(undefined));
    await settled();
    process.off('uncaughtException', onError);
    expect(thrown).toHaveLength(1);
    expect(await stored()).toHaveLength(2);
  });
});
