import type { OnUi } from '../events';
import { useWords } from '../words/words-context';
import { DeleteEverything } from './delete-everything';

export type StorageState = {
  readonly usedMegabytes: number;
  readonly quotaMegabytes: number;
  /** False where nothing outlives the page. */
  readonly lasting: boolean;
  /** The browser has promised not to clear it by itself. */
  readonly kept: boolean;
} | null;

type StorageSetupProps = { readonly storage: StorageState; readonly on: OnUi };

/** Where the logs lie, whether they stay, and how to be rid of them. */
export function StorageSetup({ storage, on }: StorageSetupProps) {
  const w = useWords();
  return (
    <section>
      <h2>{w('setup-storage')}</h2>
      {storage && (
        <>
          <p>
            {w('storage-used', {
              used: Math.round(storage.usedMegabytes),
              quota: Math.round(storage.quotaMegabytes),
            })}
          </p>
          <p>
            <b>{w(!storage.lasting ? 'storage-fleeting' : storage.kept ? 'storage-kept' : 'storage-not-kept')}</b>
          </p>
          {storage.lasting && !storage.kept && (
            <button type="button" class="button" onClick={() => on({ type: 'keep-storage' })}>
              {w('storage-keep')}
            </button>
          )}
        </>
      )}
      <DeleteEverything on={on} />
    </section>
  );
}
