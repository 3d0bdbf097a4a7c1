import { fail, ok, type Result } from '../../core/result';
import type { DraftIssue, LayoutDraft } from './draft';
import { wordsOf } from './pieces';

type LayoutResult = Result<LayoutDraft, readonly DraftIssue[]>;

/** More fasteners than one list in a document may hold. */
const MOST_FASTENERS = 64;
const NUMBER = '(\\d+(?:\\.\\d+)?)';

const refuse = (column: number, given: string, message: string, mend: string): LayoutResult =>
  fail([{ code: 'bad-layout', column, given, message, mend }]);

/** "8,160": eight fasteners evenly on a circle of 160 mm, number one at the top, on clockwise. */
export function readCircle(text: string): LayoutResult {
  const match = new RegExp(`^\\s*(\\d+)\\s*,\\s*${NUMBER}\\s*(?:mm)?\\s*$`).exec(text);
  const count = Number(match?.[1]);
  const diameter = Number(match?.[2]);
  if (!match) return refuse(1, text, 'This is not a count and a diameter.', 'Write it like 8,160: eight on 160 mm.');
  if (count < 3 || count > 48) return refuse(1, String(count), 'A circle has 3 to 48 fasteners.', 'Correct the count.');
  if (diameter <= 0 || diameter > 10_000)
    return refuse(text.indexOf(',') + 2, String(diameter), 'This diameter cannot be.', 'Give it in millimetres.');
  return ok({ kind: 'circle', count, diameter });
}

export type GridNames = { readonly columns: string | null; readonly rows: string | null };

/**
 * "4x2,120x90": four columns 120 mm apart, two rows 90 mm apart. `numbers` is the picture of the manual row by row,
 * "5 1 3 7 / 8 4 2 6", with 0 where there is none; left out, they are numbered along the rows.
 */
export function readGrid(text: string, numbers: string | null, names: GridNames): LayoutResult {
  const match = new RegExp(`^\\s*(\\d+)\\s*[x×]\\s*(\\d+)\\s*,\\s*${NUMBER}\\s*[x×]\\s*${NUMBER}\\s*(?:mm)?\\s*$`).exec(
    text,
  );
  if (!match)
    return refuse(1, text, 'This is not a grid.', 'Write it like 4x2,120x90: columns x rows, then the two pitches.');
  const [columns, rows, x, y] = match.slice(1).map(Number);
  if (!columns || !rows || !x || !y || columns > 32 || rows > 32)
    return refuse(1, text, 'A grid has 1 to 32 columns and rows, some millimetres apart.', 'Correct the counts.');
  const read = numbers === null ? along(columns, rows) : readNumbers(numbers, columns, rows);
  if (!read.ok) return read;
  const count = read.value.flat().filter((n) => n > 0).length;
  if (count === 0 || count > MOST_FASTENERS)
    return refuse(1, `${count} fasteners`, `A pattern has 1 to ${MOST_FASTENERS} fasteners.`, 'Split it in two.');
  const columnNames = namesOf(names.columns, columns, ['from the left', 'column']);
  const rowNames = namesOf(names.rows, rows, ['from the top', 'row']);
  if (!columnNames.ok) return columnNames;
  if (!rowNames.ok) return rowNames;
  return ok({ kind: 'grid', columns: columnNames.value, rows: rowNames.value, pitch: { x, y }, numbers: read.value });
}

const along = (columns: number, rows: number): Result<readonly (readonly number[])[], readonly DraftIssue[]> =>
  ok(Array.from({ length: rows }, (_, r) => Array.from({ length: columns }, (_, c) => r * columns + c + 1)));

function readNumbers(
  text: string,
  columns: number,
  rows: number,
): Result<readonly (readonly number[])[], readonly DraftIssue[]> {
  const lines = text.split(/[/\n]/).map((line) => wordsOf(line).map((word) => Number(word.text)));
  const fits = lines.length === rows && lines.every((line) => line.length === columns);
  const whole = lines.flat().every((n) => Number.isInteger(n) && n >= 0 && n <= 200);
  const bolts = lines.flat().filter((n) => n > 0);
  if (fits && whole && new Set(bolts).size === bolts.length) return ok(lines);
  const message = `These are not ${rows} rows of ${columns} numbers, each number once.`;
  const mend = 'Write them as in the picture, rows parted by "/", and 0 where there is none: 5 1 3 7 / 8 4 2 6.';
  return fail([{ code: 'bad-layout', column: 1, given: text, message, mend }]);
}

const ORDINALS = 'first second third fourth fifth sixth seventh eighth ninth tenth'.split(' ');

/** "First", "second" and so on as far as one would say them; further on a number. */
export const ordinal = (index: number): string => ORDINALS[index] ?? `number ${index + 1}`;

function namesOf(
  text: string | null,
  count: number,
  [end, many]: readonly [string, string],
): Result<readonly string[], readonly DraftIssue[]> {
  if (text === null) return ok(Array.from({ length: count }, (_, index) => `${ordinal(index)} ${many} ${end}`));
  const names = text.split(',').map((name) => name.trim());
  if (names.length === count && names.every((name) => name !== '')) return ok(names);
  const message = `There are ${count} to be named, not ${names.length}.`;
  return fail([{ code: 'bad-layout', column: 1, given: text, message, mend: 'Part the names by commas.' }]);
}

/** "0,0 60,0 30,50": a place for each fastener in millimetres, to the right and down, numbered as listed. */
export function readPlaces(text: string): LayoutResult {
  const issues: DraftIssue[] = [];
  const seen = new Set<string>();
  const at = wordsOf(text).map(({ text: word, column }) => {
    const match = /^(-?\d+(?:\.\d+)?),(-?\d+(?:\.\d+)?)$/.exec(word);
    const place = { x: Number(match?.[1]), y: Number(match?.[2]) };
    const key = `${place.x} ${place.y}`;
    const issue = { code: 'bad-layout' as const, column, given: word };
    if (!match) issues.push({ ...issue, message: 'This is not a place.', mend: 'Write x,y without a space: 60,0.' });
    else if (seen.has(key)) issues.push({ ...issue, message: 'This place is taken.', mend: 'Correct one of the two.' });
    seen.add(key);
    return place;
  });
  if (issues.length > 0) return fail(issues);
  if (at.length === 0 || at.length > MOST_FASTENERS)
    return refuse(1, `${at.length} places`, `A pattern has 1 to ${MOST_FASTENERS} fasteners.`, 'Write x,y for each.');
  return ok({ kind: 'places', at });
}
