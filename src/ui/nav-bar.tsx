import type { OnUi, ScreenName } from './events';
import type { PlainKey } from './words/words';
import { useWords } from './words/words-context';
import './nav-bar.css';

type NavBarProps = { readonly current: ScreenName | 'card'; readonly jobOpen: boolean; readonly on: OnUi };

const PLACES: readonly (readonly [ScreenName, PlainKey])[] = [
  ['bench', 'nav-bench'],
  ['record', 'nav-record'],
  ['jobs', 'nav-jobs'],
  ['procedures', 'nav-procedures'],
  ['setup', 'nav-setup'],
];

const NEEDS_JOB: ReadonlySet<ScreenName> = new Set(['bench', 'record']);

/** The way between the screens. On the Bench the same places lie on a sheet behind one button. */
export function NavBar({ current, jobOpen, on }: NavBarProps) {
  const w = useWords();
  return (
    <nav class="nav" aria-label={w('nav-label')}>
      {PLACES.filter(([name]) => jobOpen || !NEEDS_JOB.has(name)).map(([name, word]) => (
        <button
          key={name}
          type="button"
          class="nav-place"
          aria-current={
            name === current || (name === 'procedures' && (current === 'procedure' || current === 'card'))
              ? 'page'
              : undefined
          }
          onClick={() => on({ type: 'open-screen', name })}
        >
          {w(word)}
        </button>
      ))}
    </nav>
  );
}
