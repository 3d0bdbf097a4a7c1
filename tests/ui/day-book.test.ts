import { describe, expect, test } from 'vitest';
import type { TimelineLine } from '../../src/core/view/timeline-line';
import { indexOfSeq, phaseStarts, type Row, rowsOf, takenBackBy } from '../../src/ui/record/day-book';
import { say } from '../shell/fakes';

const line = (
  seq: number,
  kind: TimelineLine['kind'],
  text: string,
  more: Partial<TimelineLine> = {},
): TimelineLine => ({
  seq,
  at: Date.UTC(2031, 2, 4, 22, 0) + seq * 60_000,
  kind,
  text,
  undone: false,
  phase: 'Strip',
  bolt: null,
  clip: null,
  ...more,
});

const LINES: readonly TimelineLine[] = [
  line(1, 'break', 'Begun'),
  line(2, 'heard', 'bolt seven done'),
  line(3, 'done', 'Bolt 7 done', { undone: true }),
  line(4, 'said', 'Seven done. Eight, rear.'),
  line(5, 'fault', 'Bolt 8 felt soft', { phase: 'Tighten' }),
  line(6, 'correction', 'Taken back: bolt 7', { phase: 'Tighten', corrects: 3 }),
  line(200, 'measured', 'Cylinder 1: 11.2 bar', { phase: 'Strip' }),
];

const shown = (rows: readonly Row[]) => rows.map((r) => (r.kind === 'line' ? r.line.seq : r.words));

describe('the day-book', () => {
  test('has a heading where the day or the phase changes, also on coming back to one', () => {
    expect(shown(rowsOf(LINES, 'everything', '', say, 'UTC'))).toEqual([
      'Tuesday 4 March 2031',
      'Strip',
      1,
      2,
      3,
      4,
      'Tighten',
      5,
      6,
      'Wednesday 5 March 2031',
      'Strip',
      200,
    ]);
  });

  test('takes its days from the zone of the workshop', () => {
    const days = rowsOf(LINES, 'everything', '', say, 'Asia/Kathmandu').filter((r) => r.kind === 'day');
    expect(shown(days)).toEqual(['Wednesday 5 March 2031']);
  });

  test.each([
    ['work', [1, 3, 5, 6, 200]],
    ['talk', [2, 4]],
    ['trouble', [3, 5, 6]],
  ] as const)('shows only %s when asked', (which, seqs) => {
    expect(shown(rowsOf(LINES, which, '', say, 'UTC')).filter((r) => typeof r === 'number')).toEqual(seqs);
  });

  test.each([
    ['one word, any case', 'BOLT', [2, 3, 5, 6]],
    ['all words, any order', 'done bolt', [2, 3]],
    ['spaces only', '  ', [1, 2, 3, 4, 5, 6, 200]],
    ['words of no line', 'torque', []],
  ])('finds %s', (_name, sought, seqs) => {
    expect(shown(rowsOf(LINES, 'everything', sought, say, 'UTC')).filter((r) => typeof r === 'number')).toEqual(seqs);
  });

  test('knows where each phase begins and where a line is', () => {
    const rows = rowsOf(LINES, 'everything', '', say, 'UTC');
    expect(phaseStarts(rows).map(({ words }) => words)).toEqual(['Strip', 'Tighten', 'Strip']);
    expect(rows[indexOfSeq(rows, 6)]).toMatchObject({ kind: 'line', line: { seq: 6 } });
    expect(indexOfSeq(rows, 99)).toBe(-1);
  });

  test('links what was taken back with what took it back', () => {
    expect(takenBackBy(LINES).get(3)?.seq).toBe(6);
  });
});
