import type { OnUi } from '../events';
import { FilePicker } from '../file-picker';
import { useWords } from '../words/words-context';

/** All that a person has here, into a file and out of one. */
export function MoveEverything({ on }: { readonly on: OnUi }) {
  const w = useWords();
  return (
    <>
      <p>{w('everything-means')}</p>
      <div class="setup-row">
        <button type="button" class="button" onClick={() => on({ type: 'export-everything' })}>
          {w('everything-save')}
        </button>
        <FilePicker
          label={w('everything-take')}
          accept=".json"
          onFile={(file) => on({ type: 'import-files', what: 'job', files: [file] })}
        />
      </div>
    </>
  );
}
