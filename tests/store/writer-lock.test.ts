import { describe, expect, test } from 'vitest';
import { type Locks, type Pen, writerLock } from '../../src/store/writer-lock';

const settled = () => new Promise((resolve) => setImmediate(resolve));

type Granted = LockGrantedCallback<unknown>;

/**
 * One lock manager as the Web Locks API describes it, for exclusive locks and `ifAvailable` only. `kill` is a tab that
 * crashes: its lock goes without its callback ending.
 */
function lockManager() {
  const queue: (() => void)[] = [];
  const killers: (() => void)[] = [];

  const request = async (name: string, ...rest: [Granted] | [LockOptions, Granted]) => {
    const [options, callback] = rest.length === 1 ? [{}, rest[0]] : rest;
    if (options.ifAvailable && queue.length > 0) return callback(null);
    await new Promise<void>((granted) => {
      queue.push(granted);
      if (queue.length === 1) granted();
    });
    const killed = new Promise((resolve) => killers.push(() => resolve(undefined)));
    const result = await Promise.race([callback({ name, mode: 'exclusive' }), killed]);
    queue.shift();
    queue[0]?.();
    return result;
  };
  // The browser's overloads cannot be written as one function.
  return { locks: { request } as unknown as Locks, kill: (tab: number) => killers[tab]?.() };
}

function tab(locks: Locks | undefined) {
  const lock = writerLock(locks);
  const seen: Pen[] = [lock.pen()];
  const off = lock.on((pen) => seen.push(pen));
  return { lock, seen, off };
}

describe('one writer among the tabs', () => {
  test('a single tab asks, and writes', async () => {
    const only = tab(lockManager().locks);
    await settled();
    expect(only.seen).toEqual(['asking', 'writing']);
  });

  test('a second tab reads, and takes over when the first lets go', async () => {
    const { locks } = lockManager();
    const first = tab(locks);
    const second = tab(locks);
    await settled();
    expect(second.seen).toEqual(['asking', 'reading']);
    first.lock.release();
    await settled();
    expect(first.seen).toEqual(['asking', 'writing', 'released']);
    expect(second.seen).toEqual(['asking', 'reading', 'writing']);
  });

  test('a tab that crashes hands over too', async () => {
    const { locks, kill } = lockManager();
    tab(locks);
    await settled();
    const second = tab(locks);
    await settled();
    kill(0);
    await settled();
    expect(second.lock.pen()).toBe('writing');
  });

  test('the tab that has waited longest is next, and one that gave up is passed over', async () => {
    const { locks } = lockManager();
    const tabs = [tab(locks), tab(locks), tab(locks), tab(locks)];
    await settled();
    tabs[1]?.lock.release();
    tabs[0]?.lock.release();
    await settled();
    expect(tabs.map(({ lock }) => lock.pen())).toEqual(['released', 'released', 'writing', 'reading']);
  });

  test('never do two tabs write', async () => {
    const { locks } = lockManager();
    const tabs = [tab(locks), tab(locks), tab(locks)];
    for (const leaving of tabs) {
      await settled();
      expect(tabs.filter(({ lock }) => lock.pen() === 'writing')).toHaveLength(1);
      leaving.lock.release();
    }
    await settled();
    expect(tabs.map(({ lock }) => lock.pen())).toEqual(['released', 'released', 'released']);
  });

  test('a tab that lets go before it was answered holds nothing', async () => {
    const { locks } = lockManager();
    const hasty = tab(locks);
    hasty.lock.release();
    await settled();
    expect(hasty.seen).toEqual(['asking', 'released']);
    const next = tab(locks);
    await settled();
    expect(next.lock.pen()).toBe('writing');
  });

  test('a listener that has left is told no more', async () => {
    const only = tab(lockManager().locks);
    only.off();
    await settled();
    expect(only.seen).toEqual(['asking']);
  });
});

describe('a browser without locks', () => {
  test('writes unguarded, and says so', () => {
    expect(tab(undefined).lock.pen()).toBe('unguarded');
  });

  test('or one that refuses them to this page, likewise', async () => {
    const refusing = { request: () => Promise.reject(new DOMException('no', 'SecurityError')) };
    const only = tab(refusing);
    await settled();
    expect(only.seen).toEqual(['asking', 'unguarded']);
  });
});
