import type { BrowserContext, Page } from 'playwright-core';

/** One write to the log, as the page's database saw it. Times are the page's `performance.now()`. */
export type Write = {
  readonly stores: readonly string[];
  readonly durability: string;
  readonly seqs: readonly number[];
  readonly opened: number;
  /** When the transaction was complete; null while it is under way, or if it never was. */
  readonly complete: number | null;
};

/** What went to the disk and what left the loudspeaker, in the order it did. */
export type DiskWatch = { readonly writes: readonly Write[]; readonly sounds: readonly number[] };

/**
 * Notes every log transaction and every sound that starts. `slowMs` makes the disk slow: `complete` is told to the page
 * that much later than it came true, so that whatever does not wait for it is caught in between.
 */
export async function watchDisk(context: BrowserContext, slowMs = 0): Promise<void> {
  await context.addInitScript((slow) => {
    type Row = { stores: string[]; durability: string; seqs: number[]; opened: number; complete: number | null };
    const watch = { writes: [] as Row[], sounds: [] as number[] };
    Object.assign(window, { diskWatch: watch });
    const rows = new WeakMap<IDBTransaction, Row>();

    const open = IDBDatabase.prototype.transaction;
    IDBDatabase.prototype.transaction = function (names, mode, options) {
      const transaction = open.call(this, names, mode, options);
      if (mode !== 'readwrite') return transaction;
      const stores = [...transaction.objectStoreNames];
      const opened = performance.now();
      const row: Row = { stores, durability: transaction.durability, seqs: [], opened, complete: null };
      watch.writes.push(row);
      rows.set(transaction, row);
      const done = () => {
        row.complete = performance.now();
      };
      if (slow === 0) transaction.addEventListener('complete', done);
      else listen.call(transaction, 'complete', () => setTimeout(done, slow));
      return transaction;
    };

    const add = IDBObjectStore.prototype.add;
    IDBObjectStore.prototype.add = function (value, key) {
      if (Array.isArray(key) && typeof key[1] === 'number') rows.get(this.transaction)?.seqs.push(key[1]);
      return add.call(this, value, key);
    };

    const listen = EventTarget.prototype.addEventListener;
    if (slow > 0) {
      IDBTransaction.prototype.addEventListener = function (
        type: string,
        listener: EventListenerOrEventListenerObject,
        options?: boolean | AddEventListenerOptions,
      ) {
        if (type !== 'complete' || !rows.has(this)) return listen.call(this, type, listener, options);
        const late = (event: Event) =>
          setTimeout(
            () => (typeof listener === 'function' ? listener.call(this, event) : listener.handleEvent(event)),
            slow + 1,
          );
        return listen.call(this, type, late, options);
      };
    }

    const start = AudioBufferSourceNode.prototype.start;
    AudioBufferSourceNode.prototype.start = function (...args) {
      if (!this.loop) watch.sounds.push(performance.now());
      return start.apply(this, args);
    };
  }, slowMs);
}

export const diskWatch = (page: Page): Promise<DiskWatch> =>
  page.evaluate(() => (window as unknown as { diskWatch: DiskWatch }).diskWatch);

export type StoredJob = {
  readonly id: string;
  readonly texts: readonly string[];
  readonly head: { readonly seq: number; readonly hash: string };
};

/** What lies in the database now, read past the app. */
export function storedJobs(page: Page): Promise<readonly StoredJob[]> {
  return page.evaluate(async () => {
    const settled = <T>(request: IDBRequest<T>) =>
      new Promise<T>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const database = await settled(indexedDB.open('wrenchside'));
    const transaction = database.transaction(['jobs', 'entries']);
    const jobs = await settled(transaction.objectStore('jobs').getAll());
    const found = [];
    for (const { id, head } of jobs) {
      const texts = await settled(transaction.objectStore('entries').getAll(IDBKeyRange.bound([id], [id, []])));
      found.push({ id, texts, head });
    }
    database.close();
    return found;
  });
}
