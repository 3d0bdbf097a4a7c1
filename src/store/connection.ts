import { openDB } from 'idb';
import type { StoreFault } from '../core/log/log-store';
import { fail, ok, type Result } from '../core/result';
import { DATABASE_NAME, DATABASE_VERSION, type Database, type LogTables } from './log-tables';

/**
 * One connection to the database, opened again when the browser has cut it. When a newer version of the program wants
 * the database in another tab, this one lets go, and the next call finds a `newer-store`.
 */
export class Connection {
  readonly #name: string;
  #opening: Promise<Database> | null = null;
  #closed = false;

  constructor(name: string = DATABASE_NAME) {
    this.#name = name;
  }

  /** Runs some work on the open database and turns whatever it throws into a fault. */
  async with<T>(work: (database: Database) => Promise<Result<T, StoreFault>>): Promise<Result<T, StoreFault>> {
    const database = await this.open();
    if (!database.ok) return database;
    try {
      return await work(database.value);
    } catch (error) {
      if (nameOf(error) === 'InvalidStateError') this.#opening = null; // The connection died before it could say so.
      const detail = detailOf(error);
      return fail({ code: nameOf(error) === 'QuotaExceededError' ? 'storage-full' : 'storage-failed', detail });
    }
  }

  async open(): Promise<Result<Database, StoreFault>> {
    if (this.#closed) return fail({ code: 'storage-failed', detail: 'the store has been closed' });
    if (typeof indexedDB === 'undefined') return fail({ code: 'storage-missing', detail: 'no IndexedDB' });
    try {
      this.#opening ??= this.#openNow();
      return ok(await this.#opening);
    } catch (error) {
      this.#opening = null; // The next call tries again.
      return fail(openingFault(error));
    }
  }

  close(): void {
    this.#closed = true;
    this.#letGo();
  }

  #openNow(): Promise<Database> {
    return openDB<LogTables>(this.#name, DATABASE_VERSION, {
      upgrade: (database) => {
        // Version 1 is the first: there is nothing to carry over yet.
        database.createObjectStore('jobs', { keyPath: 'id' });
        database.createObjectStore('entries');
        database.createObjectStore('blobs');
        database.createObjectStore('settings');
      },
      blocking: () => this.#letGo(),
      terminated: () => {
        this.#opening = null;
      },
    });
  }

  #letGo(): void {
    const closed = this.#opening?.then((database) => database.close());
    closed?.catch(() => undefined); // It never opened, and whoever asked for that has been told.
    this.#opening = null;
  }
}

/** Names of DOMException as the Indexed Database API 3.0 uses them. */
function openingFault(error: unknown): StoreFault {
  const detail = detailOf(error);
  switch (nameOf(error)) {
    case 'VersionError':
      return { code: 'newer-store', detail };
    case 'InvalidStateError': // How some browsers refuse a private window.
    case 'SecurityError':
      return { code: 'storage-missing', detail };
    case 'QuotaExceededError':
      return { code: 'storage-full', detail };
    default:
      return { code: 'storage-failed', detail };
  }
}

const nameOf = (error: unknown): string => (error instanceof Error ? error.name : '');
const detailOf = (error: unknown): string =>
  error instanceof Error ? `${error.name}: ${error.message}` : String(error);
