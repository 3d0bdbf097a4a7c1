import type { OnUi } from '../events';
import { Sheet } from '../sheet';
import { useWords } from '../words/words-context';

export type ClosingProps = {
  readonly job: string;
  readonly title: string;
  /** What still blocks closing, in words, what presses most first. */
  readonly blocks: readonly string[];
};

/** What still blocks closing the open job; where nothing does, the button that closes it. */
export function ClosingSheet({ job, title, blocks, on }: ClosingProps & { readonly on: OnUi }) {
  const w = useWords();
  return (
    <Sheet title={w('closing-title', { title })} onClose={() => on({ type: 'put-closing-away' })}>
      {blocks.length > 0 ? (
        <>
          <p>{w('closing-blocked')}</p>
          <ul class="sheet-list">
            {blocks.map((block) => (
              <li key={block}>{block}</li>
            ))}
          </ul>
        </>
      ) : (
        <>
          <p>{w('closing-free')}</p>
          <button type="button" class="button button-first" onClick={() => on({ type: 'close-job', id: job })}>
            {w('button-close-job')}
          </button>
        </>
      )}
    </Sheet>
  );
}
