import { mend } from '../mend';
import { Field } from '../phrasing/field';
import type { ReplyIssue } from '../phrasing/reply-issue';
import { fail, ok, type Result } from '../result';

/** What the checker must know of the language a document is written in: its grammars/<language>/wording.yaml. */
export type Wording = {
  /** What a warning begins with, or is announced by. */
  readonly warns: readonly string[];
  /** The places on a clock face from twelve on, half an hour apart. */
  readonly clock: readonly string[];
};

/** By the codes of the languages. */
export type Wordings = ReadonlyMap<string, Wording>;

const HALF_HOURS = 24;

/** Of a language nobody has written down nothing is known: no warning is found, and places are figures. */
export const NO_WORDING: Wording = {
  warns: [],
  clock: Array.from({ length: HALF_HOURS }, (_, i) => `${Math.floor(i / 2) || 12}:${i % 2 === 0 ? '00' : '30'}`),
};

/** Reads the plain data of a wording file. */
export function readWording(raw: unknown): Result<Wording, readonly ReplyIssue[]> {
  const issues: ReplyIssue[] = [];
  const file = Field.root(raw, issues).only(['warns', 'clock']);
  const wording = { warns: file.key('warns').texts(), clock: file.key('clock').texts() };
  if (wording.clock.length !== HALF_HOURS) file.key('clock').blame('wrong-count', mend('so-many', String(HALF_HOURS)));
  return issues.length > 0 ? fail(issues) : ok(wording);
}
