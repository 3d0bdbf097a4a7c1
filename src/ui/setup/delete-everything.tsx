import { useState } from 'preact/hooks';
import type { OnUi } from '../events';
import { useWords } from '../words/words-context';

/** Clears this machine, after a second press that says what goes. */
export function DeleteEverything({ on }: { readonly on: OnUi }) {
  const w = useWords();
  const [isAsking, setAsking] = useState(false);
  if (!isAsking)
    return (
      <button type="button" class="button button-plain" onClick={() => setAsking(true)}>
        {w('delete-everything')}
      </button>
    );
  return (
    <div role="alert">
      <p>{w('delete-everything-sure')}</p>
      <div class="setup-row">
        <button
          type="button"
          class="button"
          onClick={() => {
            setAsking(false);
            on({ type: 'delete-everything' });
          }}
        >
          {w('job-delete-really')}
        </button>
        <button type="button" class="button button-first" onClick={() => setAsking(false)}>
          {w('delete-everything-keep')}
        </button>
      </div>
    </div>
  );
}
