import type { RefObject } from 'preact';
import { useLayoutEffect, useMemo, useRef, useState } from 'preact/hooks';
import { offsetsOf, rowAt, type Span, spanOf } from './window';

type Windowed = {
  readonly scroller: RefObject<HTMLElement | null>;
  /** Holds exactly the drawn rows as its children. */
  readonly drawn: RefObject<HTMLOListElement | null>;
  readonly span: Span;
  /** The row at the head of the page. */
  readonly top: number;
  /** Brings a row to the top. */
  readonly jump: (index: number) => void;
};

const GUESS = 40;
const SPARE = 600;

/**
 * Draws only the rows in sight of a list that may have tens of thousands. `rows` changes identity when its rows do; a row
 * that stays keeps its key, and so its height: what is written meanwhile moves nothing on the page.
 */
export function useWindow(rows: readonly { readonly key: string }[]): Windowed {
  const scroller = useRef<HTMLElement>(null);
  const drawn = useRef<HTMLOListElement>(null);
  const [view, setView] = useState({ top: 0, height: 800 });
  // Heights are those of rows drawn at one width.
  const known = useRef({ width: 0, heights: new Map<string, number>() });
  const [measured, setMeasured] = useState(0);
  const target = useRef<number | null>(null);

  // `measured` counts the changes of the heights that are read here.
  const offsets = useMemo(() => offsetsOf({ rows, guess: GUESS, known: known.current.heights }), [rows, measured]);
  const span = spanOf(offsets, view.top, view.height, SPARE);

  useLayoutEffect(() => {
    const element = scroller.current;
    if (!element) return;
    const look = () =>
      setView((v) =>
        v.top === element.scrollTop && v.height === element.clientHeight
          ? v
          : { top: element.scrollTop, height: element.clientHeight },
      );
    look();
    element.addEventListener('scroll', look, { passive: true });
    const resized = new ResizeObserver(() => {
      if (known.current.width !== element.clientWidth) {
        known.current = { width: element.clientWidth, heights: new Map() };
        setMeasured((n) => n + 1);
      }
      look();
    });
    resized.observe(element);
    return () => {
      element.removeEventListener('scroll', look);
      resized.disconnect();
    };
  }, []);

  useLayoutEffect(() => {
    const heights = known.current.heights;
    let changed = false;
    for (const [i, row] of [...(drawn.current?.children ?? [])].entries()) {
      const height = row.getBoundingClientRect().height;
      const key = rows[span.from + i]?.key;
      if (key !== undefined && Math.abs((heights.get(key) ?? GUESS) - height) > 0.5) {
        heights.set(key, height);
        changed = true;
      }
    }
    if (changed) setMeasured((n) => n + 1);
    const element = scroller.current;
    if (!element || target.current === null) return;
    // A jump lands by guessed heights first and is put right as the rows about it are measured.
    const wanted = offsetsOf({ rows, guess: GUESS, known: heights })[target.current] ?? 0;
    const before = element.scrollTop;
    element.scrollTop = wanted;
    if (!changed && view.top === element.scrollTop && before === element.scrollTop) target.current = null;
  });

  const jump = (index: number) => {
    target.current = index;
    if (scroller.current) scroller.current.scrollTop = offsets[index] ?? 0;
    setMeasured((n) => n + 1);
  };
  return { scroller, drawn, span, top: rowAt(offsets, view.top), jump };
}
