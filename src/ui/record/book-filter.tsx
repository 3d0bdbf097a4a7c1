import type { PlainKey } from '../words/words';
import { useWords } from '../words/words-context';
import { SHOWN, type Shown } from './day-book';
import './book-filter.css';

const LABEL: Readonly<Record<Shown, PlainKey>> = {
  everything: 'shown-everything',
  work: 'shown-work',
  talk: 'shown-talk',
  trouble: 'shown-trouble',
};

type BookFilterProps = {
  readonly shown: Shown;
  readonly search: string;
  readonly found: number;
  readonly of: number;
  readonly phases: readonly { readonly index: number; readonly words: string }[];
  readonly onShown: (shown: Shown) => void;
  readonly onSearch: (search: string) => void;
  readonly onPhase: (index: number) => void;
};

export function BookFilter(props: BookFilterProps) {
  const w = useWords();
  return (
    <div class="filter">
      <fieldset class="filter-shown">
        <legend class="unseen">{w('filter-label')}</legend>
        {SHOWN.map((shown) => (
          <label key={shown} class="filter-choice">
            <input type="radio" name="shown" checked={props.shown === shown} onChange={() => props.onShown(shown)} />
            {w(LABEL[shown])}
          </label>
        ))}
      </fieldset>
      <input
        class="boxed filter-field"
        type="search"
        aria-label={w('filter-search')}
        placeholder={w('filter-search')}
        value={props.search}
        onInput={(event) => props.onSearch(event.currentTarget.value)}
      />
      <select
        class="boxed filter-field"
        aria-label={w('filter-phase')}
        value=""
        onChange={(event) => {
          if (event.currentTarget.value !== '') props.onPhase(Number(event.currentTarget.value));
          event.currentTarget.value = '';
        }}
      >
        <option value="">{w('filter-phase')}</option>
        {props.phases.map((phase) => (
          <option key={phase.index} value={phase.index}>
            {phase.words}
          </option>
        ))}
      </select>
      <p class="filter-found" role="status">
        {w('filter-found', { found: props.found, of: props.of })}
      </p>
    </div>
  );
}
