import type { LogStore, StoreFault } from '../core/log/log-store';
import { openIndexedStore } from './indexed-store';

/** The lasting store; where it cannot be opened, one in memory and the reason, so that work can go on with a warning. */
export async function openStore(): Promise<{ readonly store: LogStore; readonly fault: StoreFault | null }> {
  const opened = await openIndexedStore();
  if (opened.ok) return { store: opened.value, fault: null };
  const { memoryStore } = await import('./memory-store');
  return { store: memoryStore(), fault: opened.error };
}
