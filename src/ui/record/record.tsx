import { useRef } from 'preact/hooks';
import type { TimelineLine } from '../../core/view/timeline-line';
import type { OnUi } from '../events';
import { usePaperHead } from '../paper-head';
import { Sheet } from '../sheet';
import { useWords } from '../words/words-context';
import { Book, type BookHandle } from './book';
import { RecordSummary, type SummaryProps } from './record-summary';
import { usePrinting } from './use-printing';
import './record.css';

export type RecordProps = SummaryProps & {
  readonly job: string;
  readonly title: string;
  /** "Tarnbeck 32V6 · edition 1 · sheet demonstration 1": what the record is about, in short lines. */
  readonly facts: readonly string[];
  readonly demonstration: boolean;
  readonly lines: readonly TimelineLine[];
  /** Draw every line, not only those in sight. Printing does so by itself. */
  readonly whole?: boolean;
  /** The clip being played. */
  readonly playing: string | null;
  /** The picture being looked at. */
  readonly picture?: { readonly clip: string; readonly url: string; readonly say: string } | null;
};

/** The record of a job: its day-book, its bolts pass by pass, its times, and the ways to take it along. */
export function RecordScreen(props: RecordProps & { readonly on: OnUi }) {
  const { job, title, facts, demonstration, picture, on } = props;
  const w = useWords();
  usePaperHead([title, facts[0]].filter(Boolean).join(' · '));
  const whole = usePrinting() || props.whole === true;
  const book = useRef<BookHandle>(null);
  const jump = (seq: number) => book.current?.jumpTo(seq);
  return (
    <main class="record">
      <header class="record-head">
        <h1 class="record-title">{title}</h1>
        <p class="record-facts">
          {demonstration && <strong class="mark">{w('demonstration-mark')}</strong>} {facts.join(' · ')}
        </p>
        <p class="record-statement">{w('record-statement')}</p>
        <div class="record-exports">
          <button type="button" class="button button-plain" onClick={() => on({ type: 'export', job, as: 'print' })}>
            {w('export-print')}
          </button>
          <button type="button" class="button button-plain" onClick={() => on({ type: 'export', job, as: 'json' })}>
            {w('export-json')}
          </button>
          <button type="button" class="button button-plain" onClick={() => on({ type: 'export', job, as: 'csv' })}>
            {w('export-csv')}
          </button>
        </div>
      </header>
      <RecordSummary {...props} whole={whole} onJump={jump} />
      <Book
        lines={props.lines}
        whole={whole}
        playing={props.playing}
        onPlay={(clip) => on({ type: 'play-clip', clip })}
        handle={book}
      />
      {picture && (
        <Sheet title={picture.say} onClose={() => on({ type: 'play-clip', clip: picture.clip })}>
          <img class="record-picture" src={picture.url} alt={picture.say} />
        </Sheet>
      )}
    </main>
  );
}
