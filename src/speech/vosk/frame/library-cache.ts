/** The name under which the library's file system stores itself, and its one table. */
const DATABASE = '/vosk';
const TABLE = 'FILE_DATA';

/**
 * Empties what the library has stored of its own accord: every model ever loaded, unpacked, which it copies into
 * memory at each start. The archive is kept elsewhere, once. The database itself stays: deleting it would wait for
 * another tab that has it open, and the library's next opening behind that.
 */
export async function emptyLibraryCache(): Promise<void> {
  // Private windows of some browsers have none, which is as good as empty.
  const known = await indexedDB.databases().catch(() => []);
  if (!known.some(({ name }) => name === DATABASE)) return;
  await new Promise<void>((resolve) => {
    const opening = indexedDB.open(DATABASE);
    // A cache that cannot be emptied costs room, and nothing else.
    opening.onerror = () => resolve();
    opening.onsuccess = () => {
      const database = opening.result;
      const done = (): void => {
        database.close();
        resolve();
      };
      if (!database.objectStoreNames.contains(TABLE)) {
        done();
        return;
      }
      const clearing = database.transaction(TABLE, 'readwrite');
      clearing.oncomplete = clearing.onabort = done;
      clearing.objectStore(TABLE).clear();
    };
  });
}
