import { expect, test } from 'vitest';
import { finding } from '../../src/core/procedure/finding';
import type { ToldIssue } from '../../src/core/procedure/finding-words';
import { excerptsOf } from '../../src/ui/procedures/excerpts';

const issue = (line: number): ToldIssue => ({
  code: 'wrong-unit',
  severity: 'error',
  file: 'job.yaml',
  line,
  column: 1,
  given: '',
  finding: finding('wrong-unit.bounds', {}),
  message: '',
  mend: '',
});

const SOURCE = Array.from({ length: 20 }, (_, i) => `line ${i + 1}`).join('\n');
const numbers = (lines: readonly number[]) =>
  excerptsOf(SOURCE, lines.map(issue)).map((run) => run.map(({ number }) => number));

test.each([
  ['two lines on either side', [10], [[8, 9, 10, 11, 12]]],
  ['the first line has none before it', [1], [[1, 2, 3]]],
  ['the last line has none after it', [20], [[18, 19, 20]]],
  ['neighbours share a run', [5, 8], [[3, 4, 5, 6, 7, 8, 9, 10]]],
  [
    'others have their own',
    [3, 15],
    [
      [1, 2, 3, 4, 5],
      [13, 14, 15, 16, 17],
    ],
  ],
  ['none, none', [], []],
  ['an issue beyond the text is not shown on a line that is not there', [40], []],
])('excerpts: %s', (_name, lines, runs) => {
  expect(numbers(lines)).toEqual(runs);
});

test('two issues of one line stand under it together', () => {
  const line = excerptsOf(SOURCE, [issue(4), issue(4)])[0]?.find(({ number }) => number === 4);
  expect(line).toMatchObject({ text: 'line 4', issues: [{ line: 4 }, { line: 4 }] });
});

test('the whole text, where it is wanted, is one run with its issues at their lines', () => {
  const runs = excerptsOf(SOURCE, [issue(3), issue(19)], Number.POSITIVE_INFINITY);
  expect(runs).toHaveLength(1);
  expect(runs[0]).toHaveLength(20);
  expect(runs[0]?.filter(({ issues }) => issues.length > 0).map(({ number }) => number)).toEqual([3, 19]);
});
