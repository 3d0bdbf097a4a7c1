import type { DraftIssue } from '../core/authoring/draft';
import type { Result } from '../core/result';
import type { ProcedureIo } from './procedure-io';

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

const draftIssueLine = (flag: string, { code, column, given, message, mend }: DraftIssue): string =>
  `--${flag}:1:${column} error ${code} ${message} Given: ${given}. ${mend}`;
