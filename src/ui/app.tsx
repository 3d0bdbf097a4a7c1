import { useEffect, useMemo } from 'preact/hooks';
import { assertNever } from '../core/result';
import { Bench, type BenchProps } from './bench/bench';
import type { CardPageProps } from './card/card-page';
import type { EarLineProps } from './ear-line';
import type { OnUi } from './events';
import type { ClosingProps } from './jobs/closing-sheet';
import type { JobsProps } from './jobs/jobs';
import { later } from './later';
import { NavBar } from './nav-bar';
import { type Notice, Notices } from './notices';
import type { ProcedureReaderProps } from './procedures/procedure-reader';
import type { ProceduresProps } from './procedures/procedures';
import type { RecordProps } from './record/record';
import type { TextSize, Theme } from './setup/settings';
import type { SetupProps } from './setup/setup';
import { Start, type StartProps } from './start/start';
import { useNoStrayDrop } from './stray-drop';
import { useKeys } from './use-keys';
import { sayer } from './words/say';
import type { ScreenWords } from './words/words';
import { WordsContext } from './words/words-context';
import './theme/theme.css';
import './theme/scale.css';
import './theme/page.css';
import './theme/controls.css';
import './theme/paged.css';
import './app.css';
// Last, so that on paper it wins over every screen.
import './theme/paper.css';

const Jobs = later(async () => (await import('./jobs/jobs')).Jobs);
const ClosingSheet = later(async () => (await import('./jobs/closing-sheet')).ClosingSheet);
const Procedures = later(async () => (await import('./procedures/procedures')).Procedures);
const ProcedureReader = later(async () => (await import('./procedures/procedure-reader')).ProcedureReader);
const CardPage = later(async () => (await import('./card/card-page')).CardPage);
const RecordScreen = later(async () => (await import('./record/record')).RecordScreen);
const EarLine = later(async () => (await import('./ear-line')).EarLine);
const Setup = later(async () => (await import('./setup/setup')).Setup);

/** What is on the screen: one of these, with all it shows. */
export type Screen =
  | ({ readonly name: 'start' } & StartProps)
  | ({ readonly name: 'bench' } & BenchProps)
  | ({ readonly name: 'record' } & RecordProps)
  | ({ readonly name: 'jobs' } & JobsProps)
  | ({ readonly name: 'procedures' } & ProceduresProps)
  | ({ readonly name: 'procedure' } & ProcedureReaderProps)
  | ({ readonly name: 'card' } & CardPageProps)
  | ({ readonly name: 'setup' } & SetupProps);

export type AppProps = {
  readonly screen: Screen;
  /** True while a job is loaded, so that the way back to the Bench is offered. */
  readonly jobOpen: boolean;
  /** What the ear does, on every screen but the Bench; null while it is off. */
  readonly ear: EarLineProps | null;
  readonly notices: readonly Notice[];
  /** Laid over whichever screen is shown. */
  readonly closing: ClosingProps | null;
  readonly theme: Theme;
  readonly textSize: TextSize;
  readonly words: ScreenWords;
  readonly on: OnUi;
};

/** The whole of what is seen. It keeps nothing that matters: everything shown comes in, everything done goes out. */
export function App({ screen, jobOpen, ear, notices, closing, theme, textSize, words, on }: AppProps) {
  const say = useMemo(() => sayer(words), [words]);
  useNoStrayDrop();
  useKeys(screen.name === 'bench' ? screen.view.buttons : null, ear?.ear.state === 'waiting', on);
  useEffect(() => {
    document.documentElement.dataset.theme = theme;
    document.documentElement.dataset.text = textSize;
  }, [theme, textSize]);
  return (
    <WordsContext.Provider value={say}>
      <div class="app">
        {screen.name !== 'bench' && <NavBar current={screen.name} jobOpen={jobOpen} on={on} />}
        <Notices notices={notices} on={on} />
        {/* Another screen is another box: it begins at its head, wherever the one before was left. */}
        <div key={screen.name} class="app-screen">
          {drawn(screen, on)}
        </div>
        {ear && (
          <div class="app-ear">
            <EarLine {...ear} on={on} />
          </div>
        )}
        {closing && <ClosingSheet {...closing} on={on} />}
      </div>
    </WordsContext.Provider>
  );
}

function drawn(screen: Screen, on: OnUi) {
  switch (screen.name) {
    case 'start':
      return <Start {...screen} on={on} />;
    case 'bench':
      return <Bench {...screen} on={on} />;
    case 'record':
      return <RecordScreen {...screen} on={on} />;
    case 'jobs':
      return <Jobs {...screen} on={on} />;
    case 'procedures':
      return <Procedures {...screen} on={on} />;
    case 'procedure':
      return <ProcedureReader {...screen} on={on} />;
    case 'card':
      return <CardPage {...screen} on={on} />;
    case 'setup':
      return <Setup {...screen} on={on} />;
    default:
      return assertNever(screen);
  }
}
