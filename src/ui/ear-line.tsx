import type { EarView } from '../core/view/bench-view';
import { EAR_STATE, HEARD_HOW } from './bench/ear-strip';
import type { OnUi } from './events';
import { letGo } from './let-go';
import { Progress } from './progress';
import { useWords } from './words/words-context';
import './ear-line.css';

export type EarLineProps = {
  readonly ear: EarView;
  /** Where the open job stands, in words; null while none is open. */
  readonly place: string | null;
};

/** What the ear does on a screen other than the Bench: its state, what it heard and what that did, and the way back. */
export function EarLine({ ear, place, on }: EarLineProps & { readonly on: OnUi }) {
  const w = useWords();
  const { heard } = ear;
  return (
    <section class="ear-line" aria-label={w('ear-label')}>
      {ear.state === 'loading' ? (
        <Progress says={w(EAR_STATE.loading)} share={null} />
      ) : (
        <b class="ear-line-state">{ear.trouble ?? w(EAR_STATE[ear.state])}</b>
      )}
      <p class="ear-line-heard" role="status">
        {heard ? (
          <>
            {w(HEARD_HOW[heard.how])} {heard.words !== '' && <q>{heard.words}</q>} {heard.did}
          </>
        ) : (
          `${place === null ? `${w('line-not-kept')} ` : ''}${w('line-hint')}`
        )}
      </p>
      {place !== null && (
        <button
          type="button"
          class="ear-line-place"
          aria-label={w('line-to-bench', { place })}
          onClick={(event) => {
            letGo(event);
            on({ type: 'open-screen', name: 'bench' });
          }}
        >
          {place}
        </button>
      )}
    </section>
  );
}
