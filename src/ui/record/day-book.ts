import type { TimelineLine } from '../../core/view/timeline-line';
import { dayTeller } from '../time-words';
import type { Say } from '../words/words';

/** A row of the day-book page: a new day, a new phase, or a line of the log. */
export type Row =
  | { readonly kind: 'day'; readonly key: string; readonly words: string }
  | { readonly kind: 'phase'; readonly key: string; readonly words: string }
  | { readonly kind: 'line'; readonly key: string; readonly line: TimelineLine };

export const SHOWN = ['everything', 'work', 'talk', 'trouble'] as const;
/** Which lines are wanted: all; what was done and measured; what was said either way; what went wrong. */
export type Shown = (typeof SHOWN)[number];

type Kind = TimelineLine['kind'];

const WORK: ReadonlySet<Kind> = new Set([
  'done',
  'measured',
  'timer',
  'job',
  'break',
  'fault',
  'correction',
  'note',
  'picture',
]);
const TALK: ReadonlySet<Kind> = new Set(['heard', 'rejected', 'said', 'question']);
const TROUBLE: ReadonlySet<Kind> = new Set(['fault', 'correction']);

/** What went wrong, what was put right, and what no longer holds. */
export const isTrouble = (line: TimelineLine): boolean => TROUBLE.has(line.kind) || line.undone;

function wanted(line: TimelineLine, shown: Shown): boolean {
  switch (shown) {
    case 'everything':
      return true;
    case 'work':
      return WORK.has(line.kind);
    case 'talk':
      return TALK.has(line.kind);
    case 'trouble':
      return isTrouble(line);
  }
}

/** True where every word looked for is in the line, in any order, in any case. */
function matches(line: TimelineLine, sought: readonly string[]): boolean {
  const text = line.text.toLowerCase();
  return sought.every((word) => text.includes(word));
}

/** The lines wanted, in the order of the log, with a heading wherever the day or the phase changes. */
export function rowsOf(
  lines: readonly TimelineLine[],
  shown: Shown,
  search: string,
  say: Say,
  timeZone?: string,
): readonly Row[] {
  const sought = search.toLowerCase().split(/\s+/).filter(Boolean);
  const rows: Row[] = [];
  let day = '';
  let phase = '';
  const dayOf = dayTeller(say, timeZone);
  for (const line of lines) {
    if (!wanted(line, shown) || !matches(line, sought)) continue;
    const today = dayOf(line.at);
    if (today !== day) rows.push({ kind: 'day', key: `day ${line.seq}`, words: today });
    if (line.phase !== phase && line.phase !== '')
      rows.push({ kind: 'phase', key: `phase ${line.seq}`, words: line.phase });
    day = today;
    phase = line.phase;
    rows.push({ kind: 'line', key: `line ${line.seq}`, line });
  }
  return rows;
}

/** Where each phase begins, for jumping there. A phase that was come back to is listed again. */
export const phaseStarts = (rows: readonly Row[]): readonly { readonly index: number; readonly words: string }[] =>
  rows.flatMap((row, index) => (row.kind === 'phase' ? [{ index, words: row.words }] : []));

export const indexOfSeq = (rows: readonly Row[], seq: number): number =>
  rows.findIndex((row) => row.kind === 'line' && row.line.seq === seq);

/** The first line shown that is not before this one; the last where all are. */
export const indexFrom = (rows: readonly Row[], seq: number): number => {
  const index = rows.findIndex((row) => row.kind === 'line' && row.line.seq >= seq);
  return index < 0 ? rows.length - 1 : index;
};

/** The day of the row at the head of the page. */
export function dayAt(rows: readonly Row[], index: number): string {
  for (let i = index; i >= 0; i--) {
    const row = rows[i];
    if (row?.kind === 'day') return row.words;
  }
  return '';
}

/** For each entry that was taken back, the entry that took it back. */
export const takenBackBy = (lines: readonly TimelineLine[]): ReadonlyMap<number, TimelineLine> =>
  new Map(lines.flatMap((line) => (line.corrects === undefined ? [] : [[line.corrects, line] as const])));
