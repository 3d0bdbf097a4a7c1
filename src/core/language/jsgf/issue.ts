import type { Mend } from '../../mend';

/** What can be wrong with a grammar text. Codes are stable; `mend` says what to do. */
export type JsgfIssueCode =
  | 'no-header'
  | 'no-grammar-name'
  | 'too-long'
  | 'too-deep'
  | 'unexpected'
  | 'unclosed'
  | 'empty'
  | 'bad-weight'
  | 'mixed-weights'
  | 'duplicate-rule'
  | 'undefined-rule'
  | 'unknown-import'
  | 'left-recursion'
  | 'recursion'
  | 'bad-tag';

/** Lines and columns count from one. `given` is the offending text, cut short where it is long. */
export type JsgfIssue = {
  readonly code: JsgfIssueCode;
  readonly line: number;
  readonly column: number;
  readonly given: string;
  readonly mend: Mend;
};
