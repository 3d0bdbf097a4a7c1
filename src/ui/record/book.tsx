import type { Ref } from 'preact';
import { useImperativeHandle, useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { TimelineLine } from '../../core/view/timeline-line';
import { ScrollArea } from '../scroll-area';
import { useWords } from '../words/words-context';
import { BookFilter } from './book-filter';
import { BookLine } from './book-line';
import { dayAt, indexFrom, indexOfSeq, phaseStarts, type Row, rowsOf, type Shown, takenBackBy } from './day-book';
import { DayStrip } from './day-strip';
import { stripOf } from './strip-of-days';
import { useWindow } from './use-window';
import './book.css';

export type BookHandle = { readonly jumpTo: (seq: number) => void };

type BookProps = {
  readonly lines: readonly TimelineLine[];
  /** Every line, drawn at once: for paper. */
  readonly whole: boolean;
  readonly playing: string | null;
  readonly onPlay: (clip: string) => void;
  /** Lets the bolt table ask for a line. */
  readonly handle: Ref<BookHandle>;
};

/** The timeline as a day-book page. It stays quick with tens of thousands of lines: only those in sight are drawn. */
export function Book({ lines, whole, playing, onPlay, handle }: BookProps) {
  const w = useWords();
  const [shown, setShown] = useState<Shown>('everything');
  const [search, setSearch] = useState('');
  const rows = useMemo(() => rowsOf(lines, shown, search, w), [lines, shown, search, w]);
  const backBy = useMemo(() => takenBackBy(lines), [lines]);
  const bySeq = useMemo(() => new Map(lines.map((line) => [line.seq, line])), [lines]);
  const strip = useMemo(() => stripOf(lines, w), [lines, w]);
  const [sought, setSought] = useState<number | null>(null);
  const { scroller, drawn, span, top, jump } = useWindow(rows);

  // Whoever works by keys goes on from the line that was sought, not from the link to it: that may be far away by then.
  const isToFocus = useRef(false);
  useLayoutEffect(() => {
    const line = isToFocus.current ? drawn.current?.querySelector<HTMLElement>('.book-sought') : null;
    if (!line) return;
    isToFocus.current = false;
    line.focus({ preventScroll: true });
  });

  const section = useRef<HTMLElement>(null);
  const jumpTo = (seq: number) => {
    setSought(seq);
    isToFocus.current = true;
    // Where the screen is longer than the window, whoever jumps from above it wants to see the lines.
    section.current?.scrollIntoView({ block: 'start' });
    const index = indexOfSeq(rows, seq);
    if (index >= 0) return jump(index);
    // The line is filtered out: show everything and find it there.
    setShown('everything');
    setSearch('');
    jump(indexOfSeq(rowsOf(lines, 'everything', '', w), seq));
  };
  useImperativeHandle(handle, () => ({ jumpTo }));

  const drawRow = (row: Row) => {
    switch (row.kind) {
      case 'day':
        return (
          <li key={row.key} class="book-day">
            <h2>{row.words}</h2>
          </li>
        );
      case 'phase':
        return (
          <li key={row.key} class="book-phase">
            <h3>{row.words}</h3>
          </li>
        );
      case 'line':
        return (
          <BookLine
            key={row.key}
            line={row.line}
            sought={row.line.seq === sought}
            takenBackBy={backBy.get(row.line.seq)}
            takesBack={row.line.corrects === undefined ? undefined : bySeq.get(row.line.corrects)}
            playing={row.line.clip !== null && row.line.clip === playing}
            onJump={jumpTo}
            onPlay={onPlay}
          />
        );
    }
  };
  return (
    <section ref={section} class="book" aria-label={w('book-label')}>
      <BookFilter
        shown={shown}
        search={search}
        found={rows.filter((r) => r.kind === 'line').length}
        of={lines.length}
        phases={phaseStarts(rows)}
        onShown={setShown}
        onSearch={setSearch}
        onPhase={jump}
      />
      <DayStrip strip={strip} here={dayAt(rows, top)} onJump={(seq) => jump(indexFrom(rows, seq))} />
      <ScrollArea inner={scroller} class={whole ? 'book-page book-page-whole' : 'book-page'} label={w('book-page')}>
        {!whole && <svg class="book-gap" width="1" height={Math.round(span.before)} aria-hidden="true" />}
        <ol ref={drawn} class="book-rows">
          {(whole ? rows : rows.slice(span.from, span.to)).map(drawRow)}
        </ol>
        {!whole && <svg class="book-gap" width="1" height={Math.round(span.after)} aria-hidden="true" />}
        {rows.length === 0 && <p class="book-none">{w(lines.length === 0 ? 'book-empty' : 'book-none')}</p>}
      </ScrollArea>
    </section>
  );
}
