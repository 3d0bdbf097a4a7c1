import type { Finding } from '../../core/procedure/finding';
import { tellFinding } from '../../core/procedure/finding-words';
import type { Result } from '../../core/result';
import type { DraftIssue } from '../authoring/draft';
import { languages, readFindingsFile } from '../tongue-files';
import type { ProcedureIo } from './io';

const MOST_TRIES = 5;

/**
 * The value of a flag, read; where it was not given, the answer of the person asked. Whatever is wrong with it is told
 * with its column, and on a terminal it is asked for again. Null after that.
 */
export async function readOrAsk<T>(
  flag: string,
  given: string | undefined,
  question: string,
  read: (text: string) => Result<T, readonly DraftIssue[]>,
  io: ProcedureIo,
): Promise<T | null> {
  let text = given;
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    if (text === undefined) {
      if (io.ask === null) {
        io.complain(`--${flag} is needed. ${question}`);
        return null;
      }
      text = (await io.ask(question)).trim();
    }
    const value = read(text);
    if (value.ok) return value.value;
    for (const issue of value.error) io.complain(draftIssueLine(flag, issue));
    if (io.ask === null) return null;
    text = undefined;
  }
  return null;
}

export function draftIssueLine(flag: string, issue: DraftIssue): string {
  const { message, mend } = 'finding' in issue ? told(issue.finding) : issue;
  return `--${flag}:1:${issue.column} error ${issue.code} ${message} Given: ${issue.given}. ${mend}`;
}

/** In the first of our languages, as this command speaks and writes. */
function told(finding: Finding): { readonly message: string; readonly mend: string } {
  const { wrong, mend } = tellFinding(readFindingsFile(languages()[0] ?? ''), finding);
  return { message: wrong, mend };
}
