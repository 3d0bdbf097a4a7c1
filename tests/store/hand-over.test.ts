import { describe, expect, test } from 'vitest';
import { headOf } from '../../src/core/log/chain';
import type { SealedText } from '../../src/core/log/envelope';
import { heardClipId } from '../../src/core/log/heard-clip';
import { checkJobFile, readJson } from '../../src/core/log/job-file';
import type { LogStore } from '../../src/core/log/log-store';
import { atOnce } from '../../src/core/pieces';
import type { Hash } from '../../src/core/ports';
import { fail } from '../../src/core/result';
import { exportJob, importJob as importChecked, printing } from '../../src/store/hand-over';
import { memoryStore } from '../../src/store/memory-store';
import { BODIES, nodeHash, type SampleBody, sealedLog, textsOf } from '../core/log/sample-log';

const CARD = { id: 'a', title: 'Left bank', procedure: 'top-end', created: 1, who: 'Mechanic', closed: false };
const clip = { id: 'clip-1', mime: 'audio/wav', bytes: Uint8Array.of(0, 255) };
const bolt = (number: number): SampleBody => ({ kind: 'bolt-done', step: 'other', bolt: number });

const log = sealedLog();
/** Two logs that go on from the third entry, each in its own way. */
const forkHere = sealedLog([...BODIES.slice(0, 3), bolt(8)]);
const forkFile = sealedLog([...BODIES.slice(0, 3), bolt(9), bolt(10)]);

/** A file's text, checked and taken in. */
async function importJob(store: Parameters<typeof importChecked>[0], text: string, hash: Hash, keep?: 'here' | 'file') {
  const root = readJson(text);
  const file = root.ok ? checkJobFile(root.value, hash) : root;
  return file.ok ? importChecked(store, file.value, keep) : fail({ code: 'bad-file' as const, issues: file.error });
}

async function holding(entries: readonly SealedText[] | null): Promise<LogStore> {
  const store = memoryStore();
  if (entries) await store.adopt(CARD, entries, [], null);
  return store;
}

function fileOf(entries: readonly SealedText[], blobs = [clip]): string {
  const head = headOf(entries.at(-1) ?? { seq: 0, hash: '0'.repeat(64) });
  return atOnce(printing({ card: CARD, head, texts: textsOf(entries) }, blobs));
}

const textsIn = async (store: LogStore) => {
  const job = await store.read('a');
  return job.ok ? job.value.texts : null;
};

describe('a job that is handed over', () => {
  test('arrives whole, blobs included, in a store that never had it', async () => {
    const from = await holding(log);
    await from.putBlob('a', clip);
    const file = await exportJob(from, 'a', true);
    const to = await holding(null);
    expect(await importJob(to, file.ok ? file.value : '', nodeHash)).toEqual({
      ok: true,
      value: { jobId: 'a', outcome: 'new' },
    });
    expect(await to.read('a')).toEqual(await from.read('a'));
    expect(await to.blob('a', 'clip-1')).toEqual({ ok: true, value: clip });
  });

  test('never carries the sound of what was heard', async () => {
    const from = await holding(log);
    await from.putBlob('a', clip);
    await from.putBlob('a', { ...clip, id: heardClipId({ seq: 2, at: 1000 }) });
    const file = await exportJob(from, 'a', true);
    const to = await holding(null);
    await importJob(to, file.ok ? file.value : '', nodeHash);
    expect(await to.blobs('a')).toEqual({ ok: true, value: [clip] });
  });

  test('leaves its blobs behind when it is told to', async () => {
    const from = await holding(log);
    await from.putBlob('a', clip);
    const file = await exportJob(from, 'a', false);
    const to = await holding(null);
    await importJob(to, file.ok ? file.value : '', nodeHash);
    expect(await to.blobs('a')).toEqual({ ok: true, value: [] });
  });

  test('can leave although its log is damaged, but does not arrive as if it were whole', async () => {
    const from = await holding(log.with(2, { ...(log[2] ?? (log[0] as SealedText)), text: '{"edited":true}' }));
    const file = await exportJob(from, 'a', false);
    expect(file.ok).toBe(true);
    const arrived = await importJob(await holding(null), file.ok ? file.value : '', nodeHash);
    expect(!arrived.ok && arrived.error).toMatchObject({
      code: 'bad-file',
      issues: [{ code: 'broken-log', at: '/entries/2', good: 2 }],
    });
  });

  test('that is not there is a fault', async () => {
    const file = await exportJob(await holding(null), 'a', true);
    expect(!file.ok && file.error.code).toBe('no-such-job');
  });
});

describe('a file of a job that is here already', () => {
  test.each([
    { what: 'the same log', here: log, file: log, outcome: 'same', stays: log },
    { what: 'an older state of it', here: log, file: log.slice(0, 2), outcome: 'behind', stays: log },
    { what: 'a newer state of it', here: log.slice(0, 2), file: log, outcome: 'extended', stays: log },
    { what: 'a log where there was none', here: [], file: log, outcome: 'extended', stays: log },
  ])('$what: $outcome', async ({ here, file, outcome, stays }) => {
    const store = await holding(here);
    expect(await importJob(store, fileOf(file), nodeHash)).toEqual({ ok: true, value: { jobId: 'a', outcome } });
    expect(await textsIn(store)).toEqual(textsOf(stays));
    expect(await store.blob('a', 'clip-1')).toEqual({ ok: true, value: clip });
  });

  test('a fork is refused, says where the two part, and changes nothing', async () => {
    const store = await holding(forkHere);
    const imported = await importJob(store, fileOf(forkFile), nodeHash);
    expect(!imported.ok && imported.error).toMatchObject({
      code: 'forked',
      jobId: 'a',
      seq: 4,
      here: { seq: 4 },
      file: { seq: 5 },
    });
    expect(await textsIn(store)).toEqual(textsOf(forkHere));
    expect(await store.blobs('a')).toEqual({ ok: true, value: [] });
  });

  test.each([
    { keep: 'here', outcome: 'kept-here', stays: forkHere },
    { keep: 'file', outcome: 'replaced', stays: forkFile },
  ] as const)('a fork goes as told: keep $keep', async ({ keep, outcome, stays }) => {
    const store = await holding(forkHere);
    expect(await importJob(store, fileOf(forkFile), nodeHash, keep)).toMatchObject({ ok: true, value: { outcome } });
    expect(await textsIn(store)).toEqual(textsOf(stays));
  });

  test('never writes over a clip that is here', async () => {
    const store = await holding(log);
    await store.putBlob('a', clip);
    await importJob(store, fileOf(log, [{ ...clip, bytes: Uint8Array.of(7) }]), nodeHash);
    expect(await store.blob('a', 'clip-1')).toEqual({ ok: true, value: clip });
  });

  test('loses the race against an entry written meanwhile', async () => {
    const store = await holding(log.slice(0, 2));
    const racing: LogStore = {
      ...store,
      read: async (jobId) => {
        const job = await store.read(jobId);
        await store.append('a', 2, log.slice(2, 3), 'strict');
        return job;
      },
    };
    const imported = await importJob(racing, fileOf(forkFile), nodeHash, 'file');
    expect(!imported.ok && imported.error.code).toBe('conflict');
    expect(await textsIn(store)).toEqual(textsOf(log.slice(0, 3)));
  });

  test('stops at a store that fails', async () => {
    const fault = { ok: false, error: { code: 'storage-failed', detail: 'disk' } } as const;
    const store = await holding(log);
    for (const part of ['read', 'blob', 'putBlob'] as const) {
      expect(await importJob({ ...store, [part]: async () => fault }, fileOf(log), nodeHash)).toEqual(fault);
    }
    expect(await importJob({ ...(await holding(null)), adopt: async () => fault }, fileOf(log), nodeHash)).toEqual(
      fault,
    );
  });
});
