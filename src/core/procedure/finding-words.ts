import { mend } from '../mend';
import { Field } from '../phrasing/field';
import type { ReplyIssue } from '../phrasing/reply-issue';
import { fail, ok, type Result } from '../result';
import type { Finding, FindingKey, FindingSlot, Part } from './finding';
import { FINDINGS, PARTS } from './finding-keys';
import type { ProcedureIssue } from './issue';

type Text = { readonly wrong: string; readonly mend: string };

/** What a language says of findings: made only by `readFindingWords`. */
export type FindingWords = {
  readonly findings: Readonly<Record<FindingKey, Text>>;
  readonly parts: Readonly<Record<Part['part'], string>>;
};

/** An issue in words: what is wrong, and how to mend it. */
export type ToldIssue = ProcedureIssue & { readonly message: string; readonly mend: string };

/** A slot; a brace that is to be read is written twice. */
const SLOT = /\{\{|\}\}|\{([a-z]+)\}/g;

/**
 * Checks the plain data of a findings file: every key has both its texts and there are no others; a text may use the
 * slots of its key, and every slot is used in one of the two. All issues are collected.
 */
export function readFindingWords(raw: unknown): Result<FindingWords, readonly ReplyIssue[]> {
  const issues: ReplyIssue[] = [];
  const file = Field.root(raw, issues).only(['findings', 'parts']);
  const texts = file.key('findings').only(Object.keys(FINDINGS));
  const findings = Object.entries(FINDINGS).map(([key, slots]) => {
    const entry = texts.key(key).only(['wrong', 'mend']);
    const text = { wrong: entry.key('wrong').text(), mend: entry.key('mend').text() };
    checkSlots(entry, `${text.wrong} ${text.mend}`, slots);
    return [key, text] as const;
  });
  const pieces = file.key('parts').only(Object.keys(PARTS));
  const parts = Object.entries(PARTS).map(([key, slots]) => {
    const text = pieces.key(key).text();
    checkSlots(pieces.key(key), text, slots);
    return [key, text] as const;
  });
  if (issues.length > 0) return fail(issues);
  // fromEntries forgets which keys there are; without an issue every key is in.
  return ok({
    findings: Object.fromEntries(findings) as FindingWords['findings'],
    parts: Object.fromEntries(parts) as FindingWords['parts'],
  });
}

function checkSlots(field: Field, text: string, slots: readonly string[]): void {
  const used = new Set([...text.matchAll(SLOT)].flatMap(([, slot]) => slot ?? []));
  const known = mend('its-slots', slots.join(', '));
  for (const slot of used) if (!slots.includes(slot)) field.blame('unknown-slot', known, slot);
  for (const slot of slots) if (!used.has(slot)) field.blame('unused-slot', known, slot);
}

/** An issue in the words of a language. */
export function tellIssue(words: FindingWords, issue: ProcedureIssue): ToldIssue {
  const { wrong, mend } = tellFinding(words, issue.finding);
  return { ...issue, message: wrong, mend };
}

export function tellFinding(words: FindingWords, { key, slots }: Finding): Text {
  const { wrong, mend } = words.findings[key];
  return { wrong: capital(filled(wrong, slots, words)), mend: capital(filled(mend, slots, words)) };
}

const filled = (text: string, slots: Finding['slots'], words: FindingWords): string =>
  text.replace(SLOT, (whole, slot?: string) => {
    if (slot === undefined) return whole.charAt(0);
    const value = slots[slot];
    return value === undefined ? whole : told(value, words);
  });

function told(value: FindingSlot, words: FindingWords): string {
  if (isList(value)) return value.map((one) => told(one, words)).join(', ');
  return typeof value === 'object' ? filled(words.parts[value.part], value.slots, words) : String(value);
}

const isList = (value: FindingSlot): value is Extract<FindingSlot, readonly unknown[]> => Array.isArray(value);

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
