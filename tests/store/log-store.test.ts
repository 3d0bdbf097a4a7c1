import 'fake-indexeddb/auto';
import { describe, expect, test } from 'vitest';
import { headOf } from '../../src/core/log/chain';
import type { JobStand } from '../../src/core/log/job-stand';
import type { JobCard, LogStore } from '../../src/core/log/log-store';
import { openIndexedStore } from '../../src/store/indexed-store';
import { memoryStore } from '../../src/store/memory-store';
import { BODIES, sealedLog, textsOf } from '../core/log/sample-log';

const card = (id: string, created = 1): JobCard => ({
  id,
  title: `Job ${id}`,
  procedure: 'top-end',
  created,
  who: 'Mechanic',
  closed: false,
});
const log = sealedLog();
const head = headOf(log.at(-1) ?? { seq: 0, hash: '' });
const STAND: Omit<JobStand, 'head'> = {
  version: 1,
  at: { kind: 'closing' },
  isPaused: false,
  ends: 0,
  worked: 5,
  machine: 'Plate',
};
const clip = { id: 'clip-1', mime: 'audio/wav', bytes: Uint8Array.of(0, 1, 254, 255) };

let databases = 0;
const STORES: readonly [name: string, open: () => Promise<LogStore>][] = [
  ['in memory', async () => memoryStore()],
  [
    'in the browser',
    async () => {
      databases += 1;
      const opened = await openIndexedStore(`contract-${databases}`);
      if (!opened.ok) throw new Error(opened.error.code);
      return opened.value;
    },
  ],
];

async function withJob(open: () => Promise<LogStore>): Promise<LogStore> {
  const store = await open();
  await store.createJob(card('a'));
  await store.append('a', 0, log, 'strict');
  return store;
}

describe.each(STORES)('a log store %s', (_, open) => {
  test('lists its jobs, newest first, each with where its log ends', async () => {
    const store = await withJob(open);
    await store.createJob(card('b', 2));
    expect(await store.jobs()).toEqual({
      ok: true,
      value: [
        { card: card('b', 2), head: { seq: 0, hash: '0'.repeat(64) }, stand: null },
        { card: card('a'), head, stand: null },
      ],
    });
  });

  test('keeps where a job stands beside its card, until another log takes its place', async () => {
    const store = await withJob(open);
    const stand = { ...STAND, head };
    expect((await store.saveStand('a', stand)).ok).toBe(true);
    await store.saveCard({ ...card('a'), closed: true });
    expect(await store.jobs()).toMatchObject({ value: [{ card: { closed: true }, head, stand }] });
    expect(await store.read('a')).toMatchObject({ value: { texts: textsOf(log) } });
    await store.adopt(card('a'), log, [], head);
    expect(await store.jobs()).toMatchObject({ value: [{ stand: null }] });
    expect(await store.saveStand('gone', stand)).toMatchObject({ error: { code: 'no-such-job' } });
  });

  test('gives a log back to the byte and in order, past the ninth entry', async () => {
    const store = await open();
    const long = sealedLog(Array.from({ length: 25 }, (_, bolt) => ({ kind: 'bolt-done', step: 's', bolt })));
    await store.createJob(card('a'));
    for (const entry of long) await store.append('a', entry.seq - 1, [entry], 'relaxed');
    const read = await store.read('a');
    expect(read.ok && read.value.texts).toEqual(textsOf(long));
  });

  test('refuses an append that does not go on from where the log ends, and changes nothing', async () => {
    const store = await open();
    await store.createJob(card('a'));
    await store.append('a', 0, log.slice(0, 3), 'strict');
    const late = await store.append('a', 2, log.slice(2, 4), 'strict');
    expect(!late.ok && late.error).toMatchObject({ code: 'conflict', expected: { seq: 2 }, actual: { seq: 3 } });
    const early = await store.append('a', 4, log.slice(4), 'strict');
    expect(!early.ok && early.error.code).toBe('conflict');
    const read = await store.read('a');
    expect(read.ok && read.value.texts).toEqual(textsOf(log.slice(0, 3)));
  });

  test('refuses an append at the right number that follows another entry', async () => {
    const store = await open();
    const other = sealedLog([...BODIES].reverse());
    await store.createJob(card('a'));
    await store.append('a', 0, other.slice(0, 3), 'strict');
    const appended = await store.append('a', 3, log.slice(3), 'strict');
    expect(!appended.ok && appended.error.code).toBe('conflict');
  });

  test('knows a job that is not there', async () => {
    const store = await open();
    const missing = { ok: false, error: { code: 'no-such-job', jobId: 'x' } };
    expect(await store.read('x')).toEqual(missing);
    expect(await store.append('x', 0, log, 'strict')).toEqual(missing);
    expect(await store.saveCard(card('x'))).toEqual(missing);
    expect(await store.putBlob('x', clip)).toEqual(missing);
  });

  test('refuses a second job of the same id', async () => {
    const store = await withJob(open);
    const again = await store.createJob(card('a'));
    expect(!again.ok && again.error).toEqual({ code: 'conflict', jobId: 'a', expected: null, actual: head });
  });

  test('changes a card without touching the log', async () => {
    const store = await withJob(open);
    await store.saveCard({ ...card('a'), title: 'Renamed', closed: true });
    const read = await store.read('a');
    expect(read.ok && read.value).toMatchObject({ card: { title: 'Renamed', closed: true }, head });
  });

  test('keeps blobs by job, and deletes them', async () => {
    const store = await withJob(open);
    await store.createJob(card('b'));
    await store.putBlob('a', clip);
    await store.putBlob('b', { ...clip, mime: 'audio/ogg' });
    expect(await store.blob('a', 'clip-1')).toEqual({ ok: true, value: clip });
    expect(await store.blobs('a')).toEqual({ ok: true, value: [clip] });
    await store.deleteBlob('a', 'clip-1');
    expect(await store.blob('a', 'clip-1')).toEqual({ ok: true, value: null });
    expect(await store.blobs('b')).toMatchObject({ ok: true, value: [{ mime: 'audio/ogg' }] });
  });

  test('removes a job with all its entries and blobs, and no other job', async () => {
    const store = await withJob(open);
    await store.createJob(card('ab'));
    await store.append('ab', 0, log, 'strict');
    await store.putBlob('a', clip);
    await store.putBlob('ab', clip);
    await store.remove('a');
    expect((await store.read('a')).ok).toBe(false);
    expect(await store.blobs('a')).toEqual({ ok: true, value: [] });
    await store.createJob(card('a'));
    const again = await store.read('a');
    expect(again.ok && again.value.texts).toEqual([]);
    const other = await store.read('ab');
    expect(other.ok && other.value.texts).toHaveLength(log.length);
    expect(await store.blobs('ab')).toEqual({ ok: true, value: [clip] });
  });

  test('adopts a whole log only in the place of the one that was looked at', async () => {
    const store = await withJob(open);
    const other = sealedLog([...BODIES].reverse());
    const stale = await store.adopt(card('a'), other, [], { ...head, seq: 3 });
    expect(!stale.ok && stale.error).toMatchObject({ code: 'conflict', actual: head });
    const taken = await store.adopt(card('a'), other, [], null);
    expect(!taken.ok && taken.error).toMatchObject({ code: 'conflict', expected: null });
    expect((await store.adopt(card('a'), other, [], head)).ok).toBe(true);
    const read = await store.read('a');
    expect(read.ok && read.value.texts).toEqual(textsOf(other));
  });

  test('adopts blobs beside those that are here, and leaves those as they are', async () => {
    const store = await withJob(open);
    await store.putBlob('a', clip);
    await store.adopt(
      card('a'),
      log,
      [
        { ...clip, bytes: Uint8Array.of(9) },
        { ...clip, id: 'clip-2' },
      ],
      head,
    );
    const blobs = await store.blobs('a');
    expect(blobs.ok && [...blobs.value].sort((x, y) => (x.id < y.id ? -1 : 1))).toEqual([
      clip,
      { ...clip, id: 'clip-2' },
    ]);
  });

  test('keeps settings, and says null for one that was never saved', async () => {
    const store = await open();
    const wrenches = [{ id: 'half-inch', most: 200 }];
    await store.saveSetting('wrenches', wrenches);
    wrenches.pop();
    expect(await store.setting('wrenches')).toEqual({ ok: true, value: [{ id: 'half-inch', most: 200 }] });
    expect(await store.setting('voice')).toEqual({ ok: true, value: null });
  });

  test('an append of nothing is done at once', async () => {
    const store = await withJob(open);
    expect((await store.append('a', log.length, [], 'relaxed')).ok).toBe(true);
  });
});
