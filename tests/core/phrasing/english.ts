import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { checkReplies, type ReplyBook } from '../../../src/core/phrasing/reply-book';

/** The plain data of the English replies, a fresh copy each time so that a test may spoil it. */
export const englishData = (): Record<string, Record<string, unknown>> =>
  parse(readFileSync(new URL('../../../grammars/en/replies.yaml', import.meta.url), 'utf8'));

export function englishBook(): ReplyBook {
  const book = checkReplies(englishData());
  if (!book.ok) throw new Error(JSON.stringify(book.error, null, 2));
  return book.value;
}
