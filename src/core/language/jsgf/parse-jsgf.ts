import { type Mend, mend } from '../../mend';
import { assertNever, fail, ok, type Result } from '../../result';
import type { Phrase } from '../grammar';
import { Cursor } from './cursor';
import type { JsgfIssue, JsgfIssueCode } from './issue';
import { tokens } from './tokens';

export type { JsgfIssue, JsgfIssueCode } from './issue';

export type JsgfRule = {
  readonly name: string;
  readonly isPublic: boolean;
  readonly phrase: Phrase;
  readonly line: number;
  readonly column: number;
};

export type JsgfFile = {
  readonly name: string;
  readonly imports: readonly string[];
  readonly rules: readonly JsgfRule[];
};

const LONGEST = 1_000_000;
const DEEPEST = 60;
const HEADER = /^\uFEFF?\s*#JSGF[ \t]+V1\.0(?:[ \t]+[^;\n]*)?;/;

/**
 * Reads a grammar text of the JSpeech Grammar Format (W3C Note, 5 June 2000): header, grammar name, imports, rules,
 * alternatives with weights, groups, optionals, `*`, `+`, tags, `<NULL>`, `<VOID>`, quoted tokens and comments.
 * Never throws; all issues are collected, reading goes on after the next semicolon.
 * Deliberately absent: resolving imports and references, which `ruleBook` does over all files together.
 */
export function parseJsgf(text: string): Result<JsgfFile, readonly JsgfIssue[]> {
  const start = { line: 1, column: 1 };
  if (text.length > LONGEST) {
    return fail([{ code: 'too-long', ...start, given: String(text.length), mend: mend('split', String(LONGEST)) }]);
  }
  const issues: JsgfIssue[] = [];
  const header = HEADER.exec(text);
  if (!header) {
    const given = (text.split('\n', 1)[0] ?? '').slice(0, 40);
    issues.push({ code: 'no-header', ...start, given, mend: mend('header') });
  }
  const file = readFile(new Cursor(tokens(text, header?.[0].length ?? 0, issues), issues));
  return issues.length > 0 ? fail(issues) : ok(file);
}

function readFile(cursor: Cursor): JsgfFile {
  let name: string | undefined;
  const imports: string[] = [];
  const rules: JsgfRule[] = [];
  const start = cursor.here();
  while (cursor.here().kind !== 'end') {
    if (cursor.takesWord('grammar')) {
      name = cursor.take('word', mend('grammar-name')).text;
      cursor.takeSign(';');
    } else if (cursor.takesWord('import')) {
      imports.push(cursor.take('rule', mend('import')).text);
      cursor.takeSign(';');
    } else rules.push(...readRule(cursor));
    cursor.leaveStatement();
  }
  if (name === undefined) cursor.note('no-grammar-name', start, mend('name-grammar'));
  return { name: name ?? '', imports, rules };
}

/** One rule, or none where it could not be read. */
function readRule(cursor: Cursor): readonly JsgfRule[] {
  const isPublic = cursor.takesWord('public');
  const { text, line, column } = cursor.take('rule', mend('rule'));
  cursor.takeSign('=');
  const phrase = readAlternatives(cursor, 0);
  cursor.takeSign(';');
  return cursor.isLost ? [] : [{ name: text, isPublic, phrase, line, column }];
}

function readAlternatives(cursor: Cursor, depth: number): Phrase {
  if (depth >= DEEPEST) return lost(cursor, 'too-deep', mend('inner-groups'));
  const first = cursor.here();
  const parts: Phrase[] = [];
  const weights: number[] = [];
  do {
    if (cursor.here().kind === 'weight') weights.push(readWeight(cursor));
    parts.push(readSequence(cursor, depth));
  } while (cursor.takesSign('|'));
  const [only] = parts;
  if (weights.length === 0) return parts.length === 1 && only ? only : { kind: 'oneOf', parts };
  if (weights.length < parts.length) cursor.note('mixed-weights', first, mend('weigh-all'));
  return { kind: 'oneOf', parts, weights };
}

function readWeight(cursor: Cursor): number {
  const token = cursor.next();
  const value = Number(token.text);
  if (Number.isFinite(value) && value >= 0) return value;
  cursor.note('bad-weight', token, mend('weight'));
  return 1;
}

function readSequence(cursor: Cursor, depth: number): Phrase {
  const parts: Phrase[] = [];
  for (let part = readItem(cursor, depth); part; part = readItem(cursor, depth)) parts.push(part);
  const [only] = parts;
  if (!only) return lost(cursor, 'empty', mend('words-here'));
  return parts.length === 1 ? only : { kind: 'seq', parts };
}

/** One part with the signs bound to it: `*`, `+` and tags bind tighter than a sequence. */
function readItem(cursor: Cursor, depth: number): Phrase | undefined {
  let part = readBare(cursor, depth);
  while (part) {
    if (cursor.takesSign('*')) part = { kind: 'repeat', part, least: 0 };
    else if (cursor.takesSign('+')) part = { kind: 'repeat', part, least: 1 };
    else if (cursor.here().kind === 'tag') part = { kind: 'tagged', part, tag: cursor.next().text.trim() };
    else break;
  }
  return part;
}

function readBare(cursor: Cursor, depth: number): Phrase | undefined {
  const token = cursor.here();
  switch (token.kind) {
    case 'word':
    case 'quoted':
      cursor.next();
      if (token.text === '') cursor.note('empty', token, mend('between-quotes'));
      return { kind: 'word', text: token.text };
    case 'rule':
      cursor.next();
      if (token.text === 'NULL') return { kind: 'null' };
      return token.text === 'VOID' ? { kind: 'void' } : { kind: 'rule', name: token.text };
    case 'sign':
      if (cursor.takesSign('(')) return readGroup(cursor, depth, ')');
      return cursor.takesSign('[') ? { kind: 'optional', part: readGroup(cursor, depth, ']') } : undefined;
    case 'tag':
    case 'weight':
    case 'end':
      return undefined;
    default:
      return assertNever(token.kind);
  }
}

function readGroup(cursor: Cursor, depth: number, close: string): Phrase {
  const part = readAlternatives(cursor, depth + 1);
  cursor.takeSign(close);
  return part;
}

function lost(cursor: Cursor, code: JsgfIssueCode, how: Mend): Phrase {
  cursor.lose(code, how);
  return { kind: 'void' };
}
