import { type Mend, mend } from '../../mend';
import type { JsgfIssue } from './issue';

export type TokenKind = 'word' | 'quoted' | 'rule' | 'tag' | 'weight' | 'sign' | 'end';

/** One token of a JSGF text. `text` is the meaning (unescaped, without its brackets). */
export type Token = {
  readonly kind: TokenKind;
  readonly text: string;
  readonly line: number;
  readonly column: number;
};

const SPACE = /[\s\uFEFF]+/y;
const LINE_COMMENT = /\/\/[^\n]*/y;
const BLOCK_COMMENT = /\/\*[\s\S]*?\*\//y;
const WORD = /[^\s\uFEFF;=|*+<>()[\]{}"/\\]+/y;
const QUOTED = /"((?:[^"\\]|\\[\s\S])*)"/y;
const RULE = /<([^<>\s]+)>/y;
const TAG = /\{((?:[^{}\\]|\\[\s\S])*)\}/y;
const WEIGHT = /\/([^/\s*][^/\s]*)\//y;
const SIGN = /[;=|*+()[\]]/y;

const READERS: readonly (readonly [TokenKind, RegExp])[] = [
  ['weight', WEIGHT],
  ['quoted', QUOTED],
  ['rule', RULE],
  ['tag', TAG],
  ['sign', SIGN],
  ['word', WORD],
];

/** Splits a JSGF body into tokens. A character that starts none is reported and stepped over; the last token is `end`. */
export function tokens(text: string, from: number, issues: JsgfIssue[]): readonly Token[] {
  const found: Token[] = [];
  const place = placer(text);
  let at = from;
  while (at < text.length) {
    const skipped = matched(SPACE, text, at) ?? matched(LINE_COMMENT, text, at) ?? matched(BLOCK_COMMENT, text, at);
    if (skipped) {
      at += skipped[0].length;
      continue;
    }
    const where = place(at);
    const read = firstMatch(text, at);
    if (!read) {
      issues.push(strayCharacter(text, at, where));
      at += 1;
      continue;
    }
    found.push({ kind: read.kind, text: unescaped(read.kind, read.inner), ...where });
    at += read.length;
  }
  found.push({ kind: 'end', text: '', ...place(text.length) });
  return found;
}

function firstMatch(text: string, at: number): { kind: TokenKind; inner: string; length: number } | undefined {
  for (const [kind, reader] of READERS) {
    const match = matched(reader, text, at);
    if (match) return { kind, inner: match[1] ?? match[0], length: match[0].length };
  }
  return undefined;
}

function matched(reader: RegExp, text: string, at: number): RegExpExecArray | null {
  reader.lastIndex = at;
  return reader.exec(text);
}

const unescaped = (kind: TokenKind, inner: string): string =>
  kind === 'quoted' || kind === 'tag' ? inner.replace(/\\([\s\S])/g, '$1') : inner;

const OPENERS: Readonly<Record<string, Mend>> = {
  '"': mend('close-quotation'),
  '<': mend('rule-name'),
  '{': mend('close-tag'),
  '/': mend('weight-or-comment'),
};

function strayCharacter(text: string, at: number, where: { line: number; column: number }): JsgfIssue {
  const given = text.slice(at, at + 20).split('\n')[0] ?? '';
  const opener = OPENERS[text.charAt(at)];
  return opener
    ? { code: 'unclosed', ...where, given, mend: opener }
    : { code: 'unexpected', ...where, given, mend: mend('take-out') };
}

/** Line and column of rising offsets in one pass. */
function placer(text: string): (at: number) => { readonly line: number; readonly column: number } {
  let line = 1;
  let lineStart = 0;
  let seen = 0;
  return (at) => {
    for (let next = text.indexOf('\n', seen); next !== -1 && next < at; next = text.indexOf('\n', seen)) {
      line += 1;
      lineStart = next + 1;
      seen = next + 1;
    }
    return { line, column: at - lineStart + 1 };
  };
}
