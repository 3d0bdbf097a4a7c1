import type { Mend } from '../mend';

/** What can be wrong with a file of replies. */
export type ReplyIssueCode =
  | 'wrong-type'
  | 'missing-key'
  | 'unknown-key'
  | 'blank-text'
  | 'wrong-count'
  | 'missing-reply'
  | 'unknown-reply'
  | 'bad-template'
  | 'unknown-slot'
  | 'unused-slot'
  | 'not-speakable';

/** `at` is the path of keys into the file, `given` what stands there. */
export type ReplyIssue = {
  readonly code: ReplyIssueCode;
  readonly at: string;
  readonly given: string;
  readonly mend: Mend;
};
