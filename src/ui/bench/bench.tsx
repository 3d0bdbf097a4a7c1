import { useState } from 'preact/hooks';
import type { BenchView, EarView } from '../../core/view/bench-view';
import type { Tappable } from '../../core/view/tappable';
import type { OnUi } from '../events';
import { later } from '../later';
import { letGo } from '../let-go';
import { NavBar } from '../nav-bar';
import { Sheet } from '../sheet';
import { useWords } from '../words/words-context';
import { Casting } from './casting';
import { EarStrip } from './ear-strip';
import { FallbackButtons } from './fallback-buttons';
import { Hazards } from './hazards';
import { StatusRow } from './status-row';
import { TalkControls } from './talk-controls';
import { WordList } from './word-list';
import { Work } from './work';
import './bench.css';
import './bench-layout.css';

export type BenchProps = {
  readonly view: BenchView;
  /** All that can be said now, worked out when somebody looks at it. */
  readonly tappable: () => readonly Tappable[];
  readonly ear: EarView;
  /** The last thing the program said, as text; null before it has spoken. */
  readonly said: string | null;
};

const TapSheet = later(async () => (await import('./tap/tap-sheet')).TapSheet);

/** Lines of more characters than this are set lighter, so that even the longest is whole on the screen. */
const LONG_LINE = 110;

/** Up to this length a line that has the width to itself is set larger still. */
const SHORT_LINE = 70;

function layoutOf(view: BenchView): string {
  const alone = !view.drawing && !view.value;
  return [
    'bench',
    `bench-${view.mood}`,
    view.drawing ? 'bench-with-drawing' : '',
    view.line.length > LONG_LINE ? 'bench-long' : '',
    alone && view.line.length <= SHORT_LINE ? 'bench-short' : '',
  ]
    .filter(Boolean)
    .join(' ');
}

/** The screen for the work itself: readable from three metres, operable with an elbow, still while somebody speaks. */
export function Bench({ view, tappable, ear, said, on }: BenchProps & { readonly on: OnUi }) {
  const w = useWords();
  const [sheet, setSheet] = useState<'words' | 'ends' | 'screens' | 'wrenches' | null>(null);
  const [touchedAt, setTouchedAt] = useState(0);
  const close = () => setSheet(null);
  return (
    <main class={layoutOf(view)}>
      <header class="bench-place">
        <h1 class="bench-pass">
          {view.placeWords}
          <small class="bench-phase">{view.phase}</small>
        </h1>
        <button
          type="button"
          class="boxed bench-screens"
          onClick={(event) => {
            letGo(event);
            setSheet('screens');
          }}
        >
          {w('nav-label')}
        </button>
        <StatusRow view={view} onShowLooseEnds={() => setSheet('ends')} />
      </header>
      <div class="bench-hazards">
        <Hazards hazards={view.hazards} />
      </div>
      <div class="bench-work">
        <Work view={view} onShowWrenches={() => setSheet('wrenches')} />
      </div>
      {view.drawing && (
        <div class="bench-drawing">
          <Casting drawing={view.drawing} />
        </div>
      )}
      <div class="bench-ear">
        <EarStrip ear={ear} said={said} />
      </div>
      <div class="bench-words">
        <WordList
          words={view.words}
          onShowAll={(event) => {
            setTouchedAt(event.timeStamp);
            setSheet('words');
          }}
        />
      </div>
      <div class="bench-talk">
        <TalkControls on={on} />
      </div>
      <div class="bench-buttons">
        <FallbackButtons buttons={view.buttons} touchedAt={touchedAt} on={on} />
      </div>
      {sheet === 'screens' && (
        <Sheet title={w('nav-label')} onClose={close}>
          <NavBar
            current="bench"
            jobOpen
            on={(event) => {
              // Choosing the Bench itself is a way of putting the sheet away.
              close();
              on(event);
            }}
          />
        </Sheet>
      )}
      {sheet === 'wrenches' && (
        <Sheet title={w('wrenches-label')} onClose={close}>
          <ul class="sheet-list">
            {view.wrenches.map((wrench) => (
              <li key={wrench.id}>
                <button
                  type="button"
                  onClick={() => {
                    close();
                    on({ type: 'use-wrench', wrench: wrench.id });
                  }}
                >
                  {wrench.words}
                </button>
              </li>
            ))}
          </ul>
        </Sheet>
      )}
      {sheet === 'words' && (
        <TapSheet
          offered={tappable}
          revision={view.revision}
          openedAt={touchedAt}
          on={on}
          onClose={(at) => {
            setTouchedAt(at);
            close();
          }}
        />
      )}
      {sheet === 'ends' && (
        <Sheet title={w('loose-ends')} onClose={close}>
          <ul class="sheet-list">
            {view.looseEnds.map((end) => (
              <li key={end}>{end}</li>
            ))}
          </ul>
        </Sheet>
      )}
    </main>
  );
}
