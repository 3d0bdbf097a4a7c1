import type { FINDINGS, PARTS } from './finding-keys';
import { ISSUE_CODES, type IssueCode } from './issue';

export type FindingKey = keyof typeof FINDINGS;
type PartKey = keyof typeof PARTS;

/** Figures, names and pieces of the document as they stand, or words that differ between languages; a list of either. */
type One = string | number | Part;
export type FindingSlot = One | readonly One[];
type Slots<S extends string> = Readonly<Record<S, FindingSlot>>;

/** The slots of a key; of one of several keys, those of all of them. */
export type FindingSlots<K extends FindingKey> = Slots<(typeof FINDINGS)[K][number]>;

/** A key that has no slots. */
export type PlainFinding = {
  readonly [K in FindingKey]: (typeof FINDINGS)[K] extends readonly [] ? K : never;
}[FindingKey];

/** What a check found, as a value: it is put into words where it is shown, in the language of whoever reads it. */
export type Finding = { readonly key: FindingKey; readonly slots: Slots<string> };

/** A piece of a finding that has words of its own. */
export type Part = { readonly part: PartKey; readonly slots: Slots<string> };

export const finding = <K extends FindingKey>(key: K, slots: FindingSlots<K>): Finding => ({ key, slots });

/** A piece without slots needs none given. */
export const part = <K extends PartKey>(
  key: K,
  ...[slots]: (typeof PARTS)[K] extends readonly [] ? [] : [Slots<(typeof PARTS)[K][number]>]
): Part => ({ part: key, slots: slots ?? {} });

const CODES: ReadonlySet<string> = new Set(ISSUE_CODES);
const isCode = (text: string): text is IssueCode => CODES.has(text);

/** The code is what stands before the dot. Throws for a key without one: the tests hold every key to its code. */
export function codeOf({ key }: Finding): IssueCode {
  const code = key.split('.', 1)[0] ?? key;
  if (!isCode(code)) throw new Error(`${key} belongs to no code`);
  return code;
}
