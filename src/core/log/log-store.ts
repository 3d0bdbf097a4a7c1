import type { Result } from '../result';
import type { Head } from './chain';
import type { SealedText } from './envelope';
import type { JobStand } from './job-stand';

/** A job as the list shows it. A label only: what happened is in the log, and the chain does not cover this. */
export type JobCard = {
  readonly id: string;
  readonly title: string;
  /** Id of the procedure carried out. */
  readonly procedure: string;
  /** UTC wall time in ms. */
  readonly created: number;
  readonly who: string;
  readonly closed: boolean;
};

export type JobRow = { readonly card: JobCard; readonly head: Head };

/** A job as the list of them has it; the stand is null where none was kept, and stale where its head is another. */
export type ListedJob = JobRow & { readonly stand: JobStand | null };

export type StoredJob = JobRow & { readonly texts: readonly string[] };

/** A clip of speech or a photo. `id` is unique in its job; entries name it. */
export type StoredBlob = { readonly id: string; readonly mime: string; readonly bytes: Uint8Array };

/** `strict` waits for the disk, `relaxed` for the operating system only: a power cut may lose the last seconds. */
export type Durability = 'strict' | 'relaxed';

export type StoreFault =
  /** Someone else has written: nothing was changed. A head of null stands for a job that is not there. */
  | {
      readonly code: 'conflict';
      readonly jobId: string;
      readonly expected: Head | null;
      readonly actual: Head | null;
    }
  | { readonly code: 'no-such-job'; readonly jobId: string }
  | { readonly code: 'storage-full'; readonly detail: string }
  | { readonly code: 'storage-failed'; readonly detail: string }
  /** The browser has no database to offer, or refuses it in a private window. */
  | { readonly code: 'storage-missing'; readonly detail: string }
  /** The database was made, or is being taken over, by a newer version of this program: reload. */
  | { readonly code: 'newer-store'; readonly detail: string };

export type Stored<T> = Promise<Result<T, StoreFault>>;

export type Estimate = { readonly usedBytes: number; readonly quotaBytes: number };

/**
 * Where logs are kept. No method throws or rejects; each that writes resolves only once its transaction is complete, and
 * does all of its work or none.
 */
export type LogStore = {
  /** False where nothing outlives the page: the user must be told. */
  readonly lasting: boolean;

  /** Newest first. */
  readonly jobs: () => Stored<readonly ListedJob[]>;
  /** An empty job, written strictly. A `conflict` where the id is taken. */
  readonly createJob: (card: JobCard) => Stored<void>;
  readonly saveCard: (card: JobCard) => Stored<void>;
  /** Written relaxed: it can be worked out again from the log. */
  readonly saveStand: (jobId: string, stand: JobStand) => Stored<void>;
  /** Adds to the end. A `conflict` where the log does not end at `expectedSeq`, or not in the entry these follow. */
  readonly append: (
    jobId: string,
    expectedSeq: number,
    entries: readonly SealedText[],
    durability: Durability,
  ) => Stored<void>;
  /** One consistent look at a whole job; the texts are as written, to the byte, and not verified. */
  readonly read: (jobId: string) => Stored<StoredJob>;
  /**
   * Puts a whole log in the place of the one here, if that still ends at `expected` (null: no such job yet). Blobs are
   * only ever added: one that is here already stays as it is. `tell` is given the share that is written.
   */
  readonly adopt: (
    card: JobCard,
    entries: readonly SealedText[],
    blobs: readonly StoredBlob[],
    expected: Head | null,
    tell?: (share: number) => void,
  ) => Stored<void>;
  /** Deletes the job, its entries and its blobs; nothing is kept back. */
  readonly remove: (jobId: string) => Stored<void>;

  readonly putBlob: (jobId: string, blob: StoredBlob) => Stored<void>;
  readonly blob: (jobId: string, id: string) => Stored<StoredBlob | null>;
  readonly blobs: (jobId: string) => Stored<readonly StoredBlob[]>;
  /** How many bytes each takes, by its id; at no time is more than one of them in memory for it. */
  readonly blobSizes: (jobId: string) => Stored<ReadonlyMap<string, number>>;
  readonly deleteBlob: (jobId: string, id: string) => Stored<void>;

  /** Null where never saved. Values are plain data; the reader checks them. */
  readonly setting: (key: string) => Stored<unknown>;
  readonly saveSetting: (key: string, value: unknown) => Stored<void>;

  /** Null where the browser does not say. */
  readonly estimate: () => Promise<Estimate | null>;
  /** Asks that the browser never clears this storage by itself; false where it will not promise. */
  readonly persist: () => Promise<boolean>;
  readonly close: () => void;
};
