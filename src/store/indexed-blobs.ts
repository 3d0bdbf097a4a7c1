import type { LogStore } from '../core/log/log-store';
import { fail, ok } from '../core/result';
import type { Connection } from './connection';
import { ofJob, writing } from './log-tables';

type Blobs = Pick<LogStore, 'putBlob' | 'blob' | 'blobs' | 'blobSizes' | 'deleteBlob' | 'setting' | 'saveSetting'>;

/**
 * Clips and photos lie beside the log and never delay it: relaxed, and in transactions of their own. They are kept as
 * bytes, because stored Blob objects have been lost by some browsers.
 */
export function indexedBlobs(connection: Connection): Blobs {
  return {
    putBlob: (jobId, { id, mime, bytes }) =>
      connection.with((database) =>
        writing(database, ['jobs', 'blobs'], 'relaxed', async (transaction) => {
          // A blob whose job has gone would lie there for ever.
          if (!(await transaction.objectStore('jobs').getKey(jobId))) return fail({ code: 'no-such-job', jobId });
          await transaction.objectStore('blobs').put({ mime, bytes }, [jobId, id]);
          return ok(undefined);
        }),
      ),

    blob: (jobId, id) =>
      connection.with(async (database) => {
        const kept = await database.get('blobs', [jobId, id]);
        return ok(kept ? { id, ...kept } : null);
      }),

    blobs: (jobId) =>
      connection.with(async (database) => {
        const transaction = database.transaction('blobs');
        const [keys, kept] = await Promise.all([
          transaction.store.getAllKeys(ofJob(jobId)),
          transaction.store.getAll(ofJob(jobId)),
          transaction.done,
        ]);
        return ok(kept.map((blob, index) => ({ id: keys[index]?.[1] ?? '', ...blob })));
      }),

    blobSizes: (jobId) =>
      connection.with(async (database) => {
        const sizes = new Map<string, number>();
        const store = database.transaction('blobs').store;
        for await (const { key, value } of store.iterate(ofJob(jobId))) sizes.set(key[1], value.bytes.length);
        return ok(sizes);
      }),

    deleteBlob: (jobId, id) =>
      connection.with((database) =>
        writing(database, ['blobs'], 'relaxed', async (transaction) => {
          await transaction.objectStore('blobs').delete([jobId, id]);
          return ok(undefined);
        }),
      ),

    setting: (key) => connection.with(async (database) => ok((await database.get('settings', key)) ?? null)),

    saveSetting: (key, value) =>
      connection.with((database) =>
        writing(database, ['settings'], 'strict', async (transaction) => {
          await transaction.objectStore('settings').put(value, key);
          return ok(undefined);
        }),
      ),
  };
}
