import type { ToldIssue } from '../../core/procedure/finding-words';

/** A line of the document with what is wrong on it. */
export type SourceLine = { readonly number: number; readonly text: string; readonly issues: readonly ToldIssue[] };

const AROUND = 2;

/** The lines with issues and two on either side, or so many, in runs; a run ends where lines are left out. */
export function excerptsOf(
  source: string,
  issues: readonly ToldIssue[],
  around = AROUND,
): readonly (readonly SourceLine[])[] {
  const lines = source.split(/\r?\n/);
  const wanted = new Set<number>();
  for (const issue of issues)
    for (let n = Math.max(1, issue.line - around); n <= Math.min(lines.length, issue.line + around); n++) wanted.add(n);
  const runs: SourceLine[][] = [];
  let last = Number.NEGATIVE_INFINITY;
  for (const number of [...wanted].sort((a, b) => a - b)) {
    const line = { number, text: lines[number - 1] ?? '', issues: issues.filter((i) => i.line === number) };
    if (number === last + 1) runs.at(-1)?.push(line);
    else runs.push([line]);
    last = number;
  }
  return runs;
}
