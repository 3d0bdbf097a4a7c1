import type { BenchView } from '../../core/view/bench-view';
import { useWords } from '../words/words-context';
import './word-list.css';

type WordListProps = {
  readonly words: BenchView['words'];
  readonly onShowAll: (event: MouseEvent) => void;
};

/** More than this is read by nobody from across the bay; the rest is behind the button. */
const SHOWN = 5;

/** The sentences that work now, the likeliest first. Touched anywhere, all of them come up to be tapped. */
export function WordList({ words, onShowAll }: WordListProps) {
  const w = useWords();
  return (
    <section class="words" aria-label={w('words-label')}>
      <p class="words-title">
        {w('words-label')}
        <button type="button" class="words-all" onClick={onShowAll}>
          {w('words-all', { count: words.length })}
        </button>
      </p>
      <ul class="words-list">
        {words.slice(0, SHOWN).map((word) => (
          <li key={word.rule}>
            <q>{word.example}</q>
          </li>
        ))}
      </ul>
    </section>
  );
}
