import type { Page } from 'playwright-core';

/** How many jobs and entries lie in the app's database, read beside the app itself. */
export const keptRows = (page: Page): Promise<{ readonly jobs: number; readonly entries: number }> =>
  page.evaluate(async () => {
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const opening = indexedDB.open('wrenchside');
      opening.onsuccess = () => resolve(opening.result);
      opening.onerror = () => reject(opening.error);
    });
    const counted = (table: string) =>
      new Promise<number>((resolve, reject) => {
        const counting = database.transaction(table).objectStore(table).count();
        counting.onsuccess = () => resolve(counting.result);
        counting.onerror = () => reject(counting.error);
      });
    const [jobs, entries] = [await counted('jobs'), await counted('entries')];
    database.close();
    return { jobs, entries };
  });
