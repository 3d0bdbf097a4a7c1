import { Listeners } from '../core/listeners';

/** The part of the browser's LockManager that is used here. */
export type Locks = Pick<LockManager, 'request'>;

/**
 * `asking`: not known yet, write nothing. `reading`: another tab has the pen, and this one waits for it. `writing`: this
 * tab has it. `unguarded`: the browser has no locks, so only the store's refusal of conflicts protects the log.
 */
export type Pen = 'asking' | 'reading' | 'writing' | 'unguarded' | 'released';

export type WriterLock = {
  readonly pen: () => Pen;
  /** Told of every change. On `writing` after `reading`, read the log again: the other tab has gone on. */
  readonly on: (listener: (pen: Pen) => void) => () => void;
  readonly release: () => void;
};

const LOCK_NAME = 'wrenchside-writer';

/**
 * One writer at a time among the tabs of this browser. The first tab to ask holds the pen until it is closed or lets go,
 * a crash included; the tab that has waited longest then takes over.
 */
export function writerLock(
  locks: Locks | undefined = globalThis.navigator?.locks,
  name: string = LOCK_NAME,
): WriterLock {
  const listeners = new Listeners<Pen>();
  const leaving = new AbortController();
  let pen: Pen = locks ? 'asking' : 'unguarded';

  const become = (next: Pen) => {
    if (pen === next || pen === 'released') return;
    pen = next;
    listeners.tell(next);
  };

  /** The lock lasts as long as this promise: for a tab that let go while it waited, not at all. */
  const hold = () => {
    become('writing');
    return new Promise<void>((resolve) => {
      if (leaving.signal.aborted) resolve();
      leaving.signal.addEventListener('abort', () => resolve());
    });
  };

  const ask = async (manager: Locks) => {
    const refused = await manager.request(name, { ifAvailable: true }, (lock) => (lock ? hold() : REFUSED));
    if (refused !== REFUSED) return;
    become('reading');
    await manager.request(name, hold);
  };

  if (locks) {
    ask(locks).catch(() => {
      // A page that may not lock at all: the store still refuses conflicts.
      become('unguarded');
    });
  }

  return {
    pen: () => pen,
    on: listeners.add,
    release: () => {
      become('released');
      leaving.abort();
    },
  };
}

const REFUSED = Symbol('the lock is held elsewhere');
