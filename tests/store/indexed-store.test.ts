import 'fake-indexeddb/auto';
import { forceCloseDatabase } from 'fake-indexeddb';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { LogStore } from '../../src/core/log/log-store';
import { openIndexedStore } from '../../src/store/indexed-store';
import { DATABASE_VERSION } from '../../src/store/log-tables';
import { openStore } from '../../src/store/open-store';
import { sealedLog, textsOf } from '../core/log/sample-log';

const CARD = { id: 'a', title: 'A', procedure: 'p', created: 1, who: 'Mechanic', closed: false };
const log = sealedLog();

let databases = 0;
const freshName = () => `indexed-${++databases}`;

async function opened(name: string): Promise<LogStore> {
  const store = await openIndexedStore(name);
  if (!store.ok) throw new Error(store.error.code);
  return store.value;
}

/** The database itself, past all of our code. */
function raw(name: string, version?: number): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(name, version);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

async function rowsIn(name: string): Promise<Record<string, number>> {
  const database = await raw(name);
  const rows: Record<string, number> = {};
  for (const table of database.objectStoreNames) {
    const request = database.transaction(table).objectStore(table).count();
    rows[table] = await new Promise((resolve) => {
      request.onsuccess = () => resolve(request.result);
    });
  }
  database.close();
  return rows;
}

const quota = () => new DOMException('no room left', 'QuotaExceededError');

afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
});

describe('how a write is made to last', () => {
  /** What each writing transaction asked for, and in which order it completed and was answered. */
  function watch() {
    const asked: string[] = [];
    const order: string[] = [];
    const transaction = IDBDatabase.prototype.transaction;
    vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(function (this: IDBDatabase, ...call) {
      const [names, mode, options] = call;
      const made = transaction.apply(this, call);
      if (mode === 'readwrite') {
        asked.push(`${[names].flat().join('+')} ${options?.durability}`);
        made.addEventListener('complete', () => order.push('complete'));
      }
      return made;
    });
    return { asked, order };
  }

  test('each kind of write asks for its own durability, and never for the default', async () => {
    const store = await opened(freshName());
    const { asked } = watch();
    await store.createJob(CARD);
    await store.append('a', 0, log.slice(0, 3), 'strict');
    await store.append('a', 3, log.slice(3), 'relaxed');
    await store.saveCard(CARD);
    await store.putBlob('a', { id: 'c', mime: 'audio/wav', bytes: new Uint8Array(1) });
    await store.deleteBlob('a', 'c');
    await store.saveSetting('units', 'metric');
    await store.adopt(CARD, log, [], { seq: 5, hash: log[4]?.hash ?? '' });
    await store.remove('a');
    expect(asked).toEqual([
      'jobs strict',
      'jobs+entries strict',
      'jobs+entries relaxed',
      'jobs strict',
      'jobs+blobs relaxed',
      'blobs relaxed',
      'settings strict',
      'jobs+entries+blobs strict',
      'jobs+entries+blobs strict',
    ]);
  });

  test('the answer comes after the transaction is complete', async () => {
    const store = await opened(freshName());
    await store.createJob(CARD);
    const { order } = watch();
    const appended = await store.append('a', 0, log, 'strict');
    order.push(`answered ${appended.ok}`);
    expect(order).toEqual(['complete', 'answered true']);
  });
});

describe('when there is no room', () => {
  test('a request that is refused leaves nothing of its batch behind', async () => {
    const name = freshName();
    const store = await opened(name);
    await store.createJob(CARD);
    const add = IDBObjectStore.prototype.add;
    let adds = 0;
    vi.spyOn(IDBObjectStore.prototype, 'add').mockImplementation(function (this: IDBObjectStore, ...call) {
      adds += 1;
      if (adds > 2) throw quota();
      return add.apply(this, call);
    });
    const appended = await store.append('a', 0, log, 'strict');
    expect(appended).toEqual({
      ok: false,
      error: { code: 'storage-full', detail: 'QuotaExceededError: no room left' },
    });
    vi.restoreAllMocks();
    expect(await rowsIn(name)).toMatchObject({ entries: 0 });
    expect((await store.append('a', 0, log, 'strict')).ok).toBe(true);
  });

  test('a commit that fails after every request has succeeded is a failure', async () => {
    const name = freshName();
    const store = await opened(name);
    await store.createJob(CARD);
    const put = IDBObjectStore.prototype.put;
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...call) {
      const request = put.apply(this, call);
      request.addEventListener('success', () => {
        // The stand-in database's own way to abort for a reason, as a browser does on commit.
        const transaction = this.transaction as unknown as { readonly _abort: (name: string) => void };
        transaction._abort('QuotaExceededError');
      });
      return request;
    });
    const appended = await store.append('a', 0, log, 'strict');
    expect(!appended.ok && appended.error.code).toBe('storage-full');
    vi.restoreAllMocks();
    expect(await rowsIn(name)).toMatchObject({ entries: 0, jobs: 1 });
  });

  test('another failure says what it was', async () => {
    const store = await opened(freshName());
    const saved = await store.saveSetting('odd', () => 1);
    expect(saved).toMatchObject({ ok: false, error: { code: 'storage-failed', detail: /DataCloneError/ } });
  });
});

describe('the database', () => {
  test('keeps a job from one opening to the next', async () => {
    const name = freshName();
    const before = await opened(name);
    await before.createJob(CARD);
    await before.append('a', 0, log, 'strict');
    before.close();
    const read = await (await opened(name)).read('a');
    expect(read.ok && read.value.texts).toEqual(textsOf(log));
  });

  test('really holds nothing of a removed job', async () => {
    const name = freshName();
    const store = await opened(name);
    await store.createJob(CARD);
    await store.append('a', 0, log, 'strict');
    await store.putBlob('a', { id: 'clip', mime: 'audio/wav', bytes: new Uint8Array(8) });
    expect(await rowsIn(name)).toEqual({ jobs: 1, entries: log.length, blobs: 1, settings: 0 });
    await store.remove('a');
    expect(await rowsIn(name)).toEqual({ jobs: 0, entries: 0, blobs: 0, settings: 0 });
  });

  test('of a newer version is refused, and not touched', async () => {
    const name = freshName();
    (await raw(name, DATABASE_VERSION + 1)).close();
    const store = await openIndexedStore(name);
    expect(!store.ok && store.error.code).toBe('newer-store');
    expect((await raw(name)).version).toBe(DATABASE_VERSION + 1);
  });

  test('is let go when a newer version of the program wants it, and says so from then on', async () => {
    const name = freshName();
    const store = await opened(name);
    (await raw(name, DATABASE_VERSION + 1)).close();
    const jobs = await store.jobs();
    expect(!jobs.ok && jobs.error.code).toBe('newer-store');
  });

  test('is opened again after the browser has cut the connection', async () => {
    const store = await opened(freshName());
    await store.createJob(CARD);
    const transaction = IDBDatabase.prototype.transaction;
    const connections: IDBDatabase[] = [];
    vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(function (this: IDBDatabase, ...call) {
      connections.push(this);
      return transaction.apply(this, call);
    });
    await store.read('a');
    // The library types its parameter as the class instead of an instance.
    for (const connection of connections) forceCloseDatabase(connection as never);
    const read = await store.read('a');
    expect(read.ok).toBe(true);
    expect(new Set(connections).size).toBe(2);
  });

  test('answers with a fault once it has been closed', async () => {
    const store = await opened(freshName());
    store.close();
    const jobs = await store.jobs();
    expect(!jobs.ok && jobs.error.code).toBe('storage-failed');
  });
});

describe('a browser without a database', () => {
  test('works on in memory, and gives the reason', async () => {
    vi.stubGlobal('indexedDB', undefined);
    const { store, fault } = await openStore();
    expect(store.lasting).toBe(false);
    expect(fault?.code).toBe('storage-missing');
  });

  test.each([
    ['InvalidStateError', 'storage-missing'],
    ['SecurityError', 'storage-missing'],
    ['UnknownError', 'storage-failed'],
  ])('one that answers %s has %s', async (name, code) => {
    vi.spyOn(indexedDB, 'open').mockImplementation(() => {
      throw new DOMException('refused', name);
    });
    expect((await openStore()).fault?.code).toBe(code);
  });
});

describe('room on the machine', () => {
  test.each([
    ['says both', { usage: 5, quota: 100 }, { usedBytes: 5, quotaBytes: 100 }],
    ['keeps one back', { usage: 5 }, null],
  ])('a browser that %s', async (_, estimate, expected) => {
    const storage = { estimate: async () => estimate, persist: async () => true, persisted: async () => false };
    const store = await openIndexedStore(freshName(), storage);
    expect(store.ok && (await store.value.estimate())).toEqual(expected);
  });

  test.each([
    ['has promised before', true, false, true],
    ['promises now', false, true, true],
    ['does not promise', false, false, false],
  ])('a browser that %s', async (_, persisted, persist, kept) => {
    const storage = { estimate: async () => ({}), persist: async () => persist, persisted: async () => persisted };
    const store = await openIndexedStore(freshName(), storage);
    expect(store.ok && (await store.value.persist())).toBe(kept);
  });

  test('a browser that has no such question, or fails to answer it, has promised nothing', async () => {
    const refusing = () => Promise.reject(new Error('refused'));
    const failing = { estimate: refusing, persist: refusing, persisted: refusing };
    for (const storage of [undefined, failing]) {
      const store = await openIndexedStore(freshName(), storage);
      expect(store.ok && (await store.value.persist())).toBe(false);
      expect(store.ok && (await store.value.estimate())).toBeNull();
    }
  });
});

test('a log taken over is written in portions of one transaction, and tells the share of each', async () => {
  const store = await opened(freshName());
  const long = sealedLog(Array.from({ length: 1201 }, (_, n) => ({ kind: 'bolt-done', step: 's', bolt: n }) as const));
  const last = long.at(-1);
  const blobs = ['x', 'y'].map((id) => ({ id, mime: 'image/jpeg', bytes: Uint8Array.of(1) }));
  const shares: number[] = [];
  expect((await store.adopt(CARD, long, blobs, null, (share) => shares.push(share))).ok).toBe(true);
  expect(shares.map((share) => Math.round(share * 1203))).toEqual([500, 1000, 1201, 1202, 1203]);
  const job = await store.read('a');
  expect(job.ok && [job.value.texts.length, job.value.head.hash]).toEqual([1201, last?.hash]);
});
