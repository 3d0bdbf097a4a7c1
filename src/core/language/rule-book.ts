import { type Mend, mend } from '../mend';
import { fail, ok, type Result } from '../result';
import { type Phrase, type RuleBook, SLOT_NAMES } from './grammar';
import type { JsgfIssue } from './jsgf/issue';
import { type JsgfFile, type JsgfRule, parseJsgf } from './jsgf/parse-jsgf';
import { all, rulesAtStart, rulesIn, tagsIn } from './jsgf/references';
import { readTag } from './tags';

export type GrammarText = { readonly file: string; readonly text: string };
export type BookIssue = JsgfIssue & { readonly file: string };

const SLOTS: ReadonlySet<string> = new Set(SLOT_NAMES);

type Read = { readonly file: string; readonly grammar: JsgfFile };

/**
 * Reads the grammar files of a language into one book. The public rules of the first file are the commands; the other
 * files hold parts. In a command the name of a slot always means the slot, even where a rule has the same name; any
 * other reference must be to a rule of the same file or a public rule of an imported grammar.
 * Recursion, which JSGF allows at the right, is refused: `*` and `+` say the same and stay bounded.
 */
export function ruleBook(texts: readonly GrammarText[]): Result<RuleBook, readonly BookIssue[]> {
  const issues: BookIssue[] = [];
  const read: Read[] = [];
  for (const { file, text } of texts) {
    const parsed = parseJsgf(text);
    if (parsed.ok) read.push({ file, grammar: parsed.value });
    else issues.push(...parsed.error.map((issue) => ({ ...issue, file })));
  }
  if (issues.length > 0) return fail(issues);
  const rules = new Map<string, Phrase>();
  for (const { file, grammar } of read)
    for (const rule of grammar.rules) {
      if (rules.has(rule.name)) issues.push(issueAt(file, rule, 'duplicate-rule', rule.name, mend('another-name')));
      else rules.set(rule.name, rule.phrase);
    }
  for (const one of read) issues.push(...referenceIssues(one, read), ...tagIssues(one), ...recursionIssues(one, rules));
  if (issues.length > 0) return fail(issues);
  const publicRules = (read[0]?.grammar.rules ?? []).filter((rule) => rule.isPublic).map((rule) => rule.name);
  return ok({ rules, publicRules });
}

const issueAt = (
  file: string,
  { line, column }: { readonly line: number; readonly column: number },
  code: BookIssue['code'],
  given: string,
  how: Mend,
): BookIssue => ({ file, code, line, column, given, mend: how });

function referenceIssues({ file, grammar }: Read, others: readonly Read[]): readonly BookIssue[] {
  const visible = new Set(grammar.rules.map((rule) => rule.name));
  const unknown: BookIssue[] = [];
  for (const from of grammar.imports) {
    const exported = exports(from, others);
    if (exported.length === 0)
      unknown.push(issueAt(file, { line: 1, column: 1 }, 'unknown-import', from, mend('import-public')));
    for (const name of exported) visible.add(name);
  }
  const undefinedRules = grammar.rules.flatMap((rule) =>
    referencesOf(rule)
      .filter((name) => !visible.has(name))
      .map((name) => issueAt(file, rule, 'undefined-rule', name, mend('define-rule'))),
  );
  return [...unknown, ...undefinedRules];
}

/** The public rules that an import names: `<grammar.*>` or `<grammar.rule>`. */
function exports(from: string, others: readonly Read[]): readonly string[] {
  const dot = from.lastIndexOf('.');
  const [owner, wanted] = [from.slice(0, dot), from.slice(dot + 1)];
  return others
    .filter((one) => one.grammar.name === owner)
    .flatMap((one) => one.grammar.rules.filter((rule) => rule.isPublic).map((rule) => rule.name))
    .filter((name) => wanted === '*' || name === wanted);
}

const tagIssues = ({ file, grammar }: Read): readonly BookIssue[] =>
  grammar.rules.flatMap((rule) => [
    ...tagsIn(rule.phrase)
      .filter((tag) => [undefined, 'slot'].includes(readTag(tag)?.kind))
      .map((tag) => issueAt(file, rule, 'bad-tag', tag, mend('tag'))),
    ...namesOnLastWord(rule.phrase).map((tag) => issueAt(file, rule, 'bad-tag', tag, mend('parentheses'))),
  ]);

/** Names that follow several words but, as JSGF binds tags, hold only the last of them. */
const namesOnLastWord = (phrase: Phrase): readonly string[] =>
  all(phrase).flatMap((part) =>
    part.kind === 'seq'
      ? part.parts.flatMap((inside) =>
          inside.kind === 'tagged' && readTag(inside.tag)?.kind === 'name' ? [inside.tag] : [],
        )
      : [],
  );

function recursionIssues({ file, grammar }: Read, rules: ReadonlyMap<string, Phrase>): readonly BookIssue[] {
  const leadsBack = (rule: JsgfRule, next: (phrase: Phrase) => readonly string[]): boolean => {
    const seen = new Set<string>();
    const open = next(rule.phrase).filter((name) => !isSlotIn(rule, name));
    for (let name = open.pop(); name !== undefined; name = open.pop()) {
      if (name === rule.name) return true;
      const phrase = seen.has(name) ? undefined : rules.get(name);
      seen.add(name);
      if (phrase) open.push(...next(phrase));
    }
    return false;
  };
  return grammar.rules.flatMap((rule) => {
    const how = mend('repetition');
    if (leadsBack(rule, (phrase) => rulesAtStart(phrase, rules)))
      return [issueAt(file, rule, 'left-recursion', rule.name, how)];
    return leadsBack(rule, rulesIn) ? [issueAt(file, rule, 'recursion', rule.name, how)] : [];
  });
}

const isSlotIn = (rule: JsgfRule, name: string): boolean => rule.isPublic && SLOTS.has(name);

const referencesOf = (rule: JsgfRule): readonly string[] =>
  rulesIn(rule.phrase).filter((name) => !isSlotIn(rule, name));
