import type { DBSchema, IDBPDatabase, IDBPTransaction, StoreNames } from 'idb';
import type { JobStand } from '../core/log/job-stand';
import type { Durability, JobRow } from '../core/log/log-store';

export const DATABASE_NAME = 'wrenchside';
export const DATABASE_VERSION = 1;

/** The database, version 1. Entries and blobs are keyed by their job first, so that a job is one range of keys. */
export interface LogTables extends DBSchema {
  jobs: { key: string; value: { readonly id: string; readonly stand?: JobStand } & JobRow };
  entries: { key: [jobId: string, seq: number]; value: string };
  blobs: { key: [jobId: string, id: string]; value: { readonly mime: string; readonly bytes: Uint8Array } };
  settings: { key: string; value: unknown };
}

export type Database = IDBPDatabase<LogTables>;

type Names = ArrayLike<StoreNames<LogTables>>;

/** Everything of one job in `entries` or `blobs`: an array sorts after any number or string. */
export const ofJob = (jobId: string): IDBKeyRange => IDBKeyRange.bound([jobId], [jobId, []]);

/**
 * One transaction, whole: resolves when it is complete, not when its last request has succeeded, and undoes everything
 * when any part of the work fails. The work may await nothing but requests of its own transaction.
 */
export async function writing<N extends Names, T>(
  database: Database,
  names: N,
  durability: Durability,
  work: (transaction: IDBPTransaction<LogTables, N, 'readwrite'>) => Promise<T>,
): Promise<T> {
  const transaction = database.transaction(names, 'readwrite', { durability });
  const working = work(transaction).catch((error: unknown) => {
    abort(transaction);
    throw error;
  });
  const [value] = await Promise.all([working, transaction.done]);
  return value;
}

function abort(transaction: { readonly abort: () => void }): void {
  try {
    transaction.abort();
  } catch {
    // The failed request has aborted it already, and its error is on the way to the caller.
  }
}
