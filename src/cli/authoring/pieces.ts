/** A piece of a typed line and the column, from 1, at which it begins. */
export type Piece = { readonly text: string; readonly column: number };

/**
 * Parts a list as manuals print one: at semicolons, and at commas that are followed by a space or stand behind
 * anything but a digit, since "22,5" is one figure. Nothing is parted inside brackets.
 */
export function piecesOf(line: string): readonly Piece[] {
  const pieces: Piece[] = [];
  let depth = 0;
  let start = 0;
  const cut = (end: number): void => {
    pieces.push(trimmed(line.slice(start, end), start));
    start = end + 1;
  };
  for (let i = 0; i < line.length; i++) {
    const sign = line[i] ?? '';
    if ('(['.includes(sign)) depth += 1;
    else if (')]'.includes(sign)) depth = Math.max(0, depth - 1);
    else if (depth === 0 && (sign === ';' || (sign === ',' && partsHere(line, i)))) cut(i);
  }
  cut(line.length);
  return pieces.filter(({ text }) => text !== '');
}

const partsHere = (line: string, at: number): boolean =>
  /^(?:\s|$)/.test(line.slice(at + 1)) || !/\d/.test(line[at - 1] ?? '');

/** The words of a line, parted by spaces; commas between them do no harm. */
export const wordsOf = (line: string): readonly Piece[] =>
  [...line.matchAll(/[^\s]+/g)].map((match) => ({
    text: match[0].replace(/,$/, ''),
    column: (match.index ?? 0) + 1,
  }));

function trimmed(text: string, offset: number): Piece {
  const lead = text.length - text.trimStart().length;
  return { text: text.trim(), column: offset + lead + 1 };
}
