import type { LogStore, StoreFault } from '../core/log/log-store';
import { openIndexedStore } from './indexed-store';
import { memoryStore } from './memory-store';

/** The lasting store; where it cannot be opened, one in memory and the reason, so that work can go on with a warning. */
export async function openStore(): Promise<{ readonly store: LogStore; readonly fault: StoreFault | null }> {
  const opened = await openIndexedStore();
  return opened.ok ? { store: opened.value, fault: null } : { store: memoryStore(), fault: opened.error };
}
