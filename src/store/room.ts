import type { LogStore } from '../core/log/log-store';

/** The part of the browser's StorageManager that is used here; absent outside a secure context. */
export type Room = Pick<StorageManager, 'estimate' | 'persist' | 'persisted'>;

/** How much room there is, and the request that the browser never clears it by itself. */
export function room(
  storage: Room | undefined = globalThis.navigator?.storage,
): Pick<LogStore, 'estimate' | 'persist'> {
  return {
    estimate: async () => {
      const { usage, quota } = (await storage?.estimate().catch(() => undefined)) ?? {};
      return usage === undefined || quota === undefined ? null : { usedBytes: usage, quotaBytes: quota };
    },
    persist: async () => {
      if (!storage) return false;
      // A browser may ask the person, or decide by itself: a refusal is an answer, an error counts as one.
      return (await storage.persisted().catch(() => false)) || (await storage.persist().catch(() => false));
    },
  };
}
