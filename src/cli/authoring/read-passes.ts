import type { Dimension, Printed } from '../../core/fastening/quantity';
import { baseOf } from '../../core/fastening/quantity';
import { readQuantity } from '../../core/procedure/build/quantity';
import { finding } from '../../core/procedure/finding';
import type { Report } from '../../core/procedure/issue';
import { fail, ok, type Result } from '../../core/result';
import { languages, readWordingFile } from '../tongue-files';
import type { DraftIssue, PassDraft, SubsetDraft } from './draft';
import { type Piece, piecesOf } from './pieces';

/** The usual window of an angle where a manual gives none, in degrees either way (common practice). */
const USUAL_WINDOW = 5;

/**
 * Reads passes as manuals print them: "30 N·m (22 lbf·ft), 50 N·m, 90°, 90°". A pass may also be "repeat",
 * "slacken 180°" or "wait 10 min", and may end in "of NAME" for a subset. Issues are collected over all of them.
 */
export function readPasses(
  line: string,
  subsets: readonly SubsetDraft[],
): Result<readonly PassDraft[], readonly DraftIssue[]> {
  const issues: DraftIssue[] = [];
  const passes: PassDraft[] = [];
  const pieces = piecesOf(line);
  if (pieces.length === 0 || pieces.length > MOST_PASSES) {
    const message = `There are ${pieces.length} passes.`;
    const mend = `Give one to ${MOST_PASSES}, parted by commas: 30 N·m, 50 N·m, 90°.`;
    return fail([{ code: 'bad-pass', column: 1, given: line, message, mend }]);
  }
  for (const piece of pieces) {
    const pass = readPass(piece, passes, subsets);
    if (pass.ok) passes.push(pass.value);
    else issues.push(...pass.error);
  }
  return issues.length > 0 ? fail(issues) : ok(passes);
}

const MOST_PASSES = 24;
const SUBSET = /\s+of\s+([a-z][a-z0-9-]*)$/i;
const WORDED = /^(repeat|again|slacken|loosen|wait)\b\s*/i;

function readPass(
  piece: Piece,
  before: readonly PassDraft[],
  subsets: readonly SubsetDraft[],
): Result<PassDraft, readonly DraftIssue[]> {
  const of = SUBSET.exec(piece.text)?.[1] ?? null;
  if (of !== null && !subsets.some(({ name }) => name === of)) {
    const known = subsets.map(({ name }) => name).join(', ');
    return fail([
      {
        code: 'bad-subset',
        column: piece.column + piece.text.lastIndexOf(of),
        given: of,
        message: `There is no subset "${of}".`,
        mend: known === '' ? `Add --subset ${of}=1-4.` : `Use ${known}.`,
      },
    ]);
  }
  const text = piece.text.replace(SUBSET, '');
  const word = WORDED.exec(text)?.[1]?.toLowerCase() ?? '';
  const lead = WORDED.exec(text)?.[0].length ?? 0;
  const figure: Piece = { text: text.slice(lead).replace(/^\+\s*/, ''), column: piece.column + lead };
  switch (word) {
    case 'repeat':
    case 'again':
      return figure.text === '' ? repeated(piece, of, before) : torque('repeat', figure, of);
    case 'slacken':
    case 'loosen':
      return read(figure, 'angle', (printed) => ({ kind: 'slacken', figure: printed, of }));
    case 'wait':
      return read(figure, 'time', (printed) => ({ kind: 'wait', figure: printed }));
    default:
      return /°|º|deg|turn/i.test(figure.text) ? angle(figure, of) : torque('torque', figure, of);
  }
}

/** "Repeat" alone means the torque these fasteners last had. */
function repeated(
  piece: Piece,
  of: string | null,
  before: readonly PassDraft[],
): Result<PassDraft, readonly DraftIssue[]> {
  const last = before.findLast((pass) => pass.kind !== 'wait' && pass.of === of);
  if (last?.kind === 'torque' || last?.kind === 'repeat') return ok({ ...last, kind: 'repeat' });
  return fail([
    {
      code: 'bad-pass',
      column: piece.column,
      given: piece.text,
      message: 'No torque stands right before this to be repeated.',
      mend: 'Put it behind the torque pass of the same fasteners, or write the figure out.',
    },
  ]);
}

const torque = (kind: 'torque' | 'repeat', figure: Piece, of: string | null) =>
  read(figure, 'torque', (printed, { value, unit }): PassDraft => ({ kind, figure: printed, value, unit, of }));

function angle(figure: Piece, of: string | null): Result<PassDraft, readonly DraftIssue[]> {
  return read(figure, 'angle', (printed, measured): PassDraft => {
    if (measured.window !== undefined) return { kind: 'angle', figure: printed, windowAssumed: false, of };
    const degrees = baseOf(measured, 'angle');
    const value = degrees.ok ? Math.round(degrees.value * 10) / 10 : measured.value;
    const least = Math.max(value / 2, value - USUAL_WINDOW);
    return { kind: 'angle', figure: `${value}° (${least}–${value + USUAL_WINDOW})`, windowAssumed: true, of };
  });
}

/** Reads a figure exactly as the checker of documents will, so that both say the same about it. */
function read(
  { text, column }: Piece,
  wanted: Dimension,
  then: (printed: string, figure: Printed) => PassDraft,
): Result<PassDraft, readonly DraftIssue[]> {
  const issues: DraftIssue[] = [];
  const report: Report = {
    error: (key, _at, given, slots) => {
      issues.push({ code: 'bad-figure', column, given, finding: finding(key, slots) });
    },
    // A pair that disagrees is told by the check of the finished document.
    warning: () => {},
    units: readWordingFile(languages()[0] ?? '').units,
  };
  const figure = readQuantity(text, wanted, [], report);
  if (figure !== null && figure.value > 0) return ok(then(text, figure));
  if (issues.length > 0) return fail(issues);
  const message = 'This must be more than nothing.';
  return fail([{ code: 'bad-figure', column, given: text, message, mend: 'Write the figure from the manual.' }]);
}
