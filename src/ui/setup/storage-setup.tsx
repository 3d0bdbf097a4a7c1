import type { OnUi } from '../events';
import { useWords } from '../words/words-context';
import { DeleteEverything } from './delete-everything';
import { MoveEverything } from './move-everything';

export type StorageState = {
  readonly usedMegabytes: number;
  readonly quotaMegabytes: number;
  /** False where nothing outlives the page. */
  readonly lasting: boolean;
  /** The browser has promised not to clear it by itself. */
  readonly kept: boolean;
} | null;

/** How far the browser has kept the program itself for a day without a network; null while nothing is known. */
export type OfflineState = {
  readonly state: 'unsupported' | 'filling' | 'incomplete' | 'ready';
  readonly keptBytes: number;
  readonly ofBytes: number;
} | null;

type StorageSetupProps = { readonly storage: StorageState; readonly offline: OfflineState; readonly on: OnUi };

/** Where the logs lie, whether they stay, and how to be rid of them. */
export function StorageSetup({ storage, offline, on }: StorageSetupProps) {
  const w = useWords();
  return (
    <section>
      <h2>{w('setup-storage')}</h2>
      {offline && <Offline {...offline} />}
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
      <MoveEverything on={on} />
      <DeleteEverything on={on} />
    </section>
  );
}

function Offline({ state, keptBytes, ofBytes }: NonNullable<OfflineState>) {
  const w = useWords();
  const share = { kept: Math.round(keptBytes / 1e6), of: Math.round(ofBytes / 1e6) };
  if (state === 'ready') return <p>{w('offline-ready')}</p>;
  if (state === 'unsupported') return <p>{w('offline-unsupported')}</p>;
  return (
    <p>
      <label>
        {w(state === 'filling' ? 'offline-filling' : 'offline-incomplete', share)}{' '}
        <progress max={ofBytes} value={keptBytes} />
      </label>
    </p>
  );
}
