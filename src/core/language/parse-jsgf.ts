import { fail, ok, type Result } from '../result';
import type { Phrase } from './grammar';
import type { JsgfIssue, JsgfIssueCode } from './jsgf/issue';
import { type Token, tokens } from './jsgf/tokens';

export type { JsgfIssue, JsgfIssueCode } from './jsgf/issue';

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
    const given = `${text.length} characters`;
    return fail([{ code: 'too-long', ...start, given, mend: `Split the grammar into files below ${LONGEST}.` }]);
  }
  const issues: JsgfIssue[] = [];
  const header = HEADER.exec(text);
  if (!header) {
    const given = (text.split('\n', 1)[0] ?? '').slice(0, 40);
    issues.push({ code: 'no-header', ...start, given, mend: 'Begin the file with "#JSGF V1.0;".' });
  }
  const file = new Reader(tokens(text, header?.[0].length ?? 0, issues), issues).file();
  return issues.length > 0 ? fail(issues) : ok(file);
}

/**
 * Recursive descent with panic mode: the first thing that cannot be read is reported, the rest of its statement is
 * stepped over, and what was read of it is dropped.
 */
class Reader {
  private at = 0;
  private depth = 0;
  private isLost = false;

  constructor(
    private readonly all: readonly Token[],
    private readonly issues: JsgfIssue[],
  ) {}

  file(): JsgfFile {
    let name: string | undefined;
    const imports: string[] = [];
    const rules: JsgfRule[] = [];
    while (this.here().kind !== 'end') {
      const token = this.here();
      this.isLost = false;
      if (this.takesWord('grammar')) name = this.grammarName();
      else if (this.takesWord('import')) imports.push(this.importName());
      else rules.push(...this.rule());
      if (this.isLost) this.takesSign(';');
      if (name === undefined) {
        this.note('no-grammar-name', token, 'Name the grammar after the header: "grammar name;".');
        name = '';
      }
    }
    if (name === undefined) this.note('no-grammar-name', this.here(), 'Name the grammar: "grammar name;".');
    return { name: name ?? '', imports, rules };
  }

  private grammarName(): string {
    const name = this.take('word', 'A grammar name is one word, with dots between its parts.').text;
    this.takeSign(';');
    return name;
  }

  private importName(): string {
    const name = this.take('rule', 'Write an import as "import <grammar.*>;".').text;
    this.takeSign(';');
    return name;
  }

  private rule(): readonly JsgfRule[] {
    const isPublic = this.takesWord('public');
    const { text, line, column } = this.take('rule', 'A rule is written "<name> = words;".');
    this.takeSign('=');
    const phrase = this.alternatives();
    this.takeSign(';');
    return this.isLost ? [] : [{ name: text, isPublic, phrase, line, column }];
  }

  private alternatives(): Phrase {
    if (this.depth >= DEEPEST) return this.lose('too-deep', 'Give the inner groups rules of their own.');
    this.depth += 1;
    const first = this.here();
    const parts: Phrase[] = [];
    const weights: number[] = [];
    do {
      if (this.here().kind === 'weight') weights.push(this.weight());
      parts.push(this.sequence());
    } while (this.takesSign('|'));
    this.depth -= 1;
    const [only] = parts;
    if (weights.length === 0) return parts.length === 1 && only ? only : { kind: 'oneOf', parts };
    if (weights.length < parts.length && !this.isLost)
      this.note('mixed-weights', first, 'Weigh every alternative or none.');
    return { kind: 'oneOf', parts, weights };
  }

  private weight(): number {
    const token = this.next();
    const value = Number(token.text);
    if (Number.isFinite(value) && value >= 0) return value;
    this.note('bad-weight', token, 'A weight is a number from 0 up, such as /0.5/.');
    return 1;
  }

  private sequence(): Phrase {
    const parts: Phrase[] = [];
    for (let part = this.item(); part; part = this.item()) parts.push(part);
    const [only] = parts;
    if (!only) return this.lose('empty', 'Put words here, or <NULL> where nothing need be said.');
    return parts.length === 1 ? only : { kind: 'seq', parts };
  }

  /** One part with the signs bound to it: `*`, `+` and tags bind tighter than a sequence. */
  private item(): Phrase | undefined {
    let part = this.bare();
    while (part) {
      if (this.takesSign('*')) part = { kind: 'repeat', part, least: 0 };
      else if (this.takesSign('+')) part = { kind: 'repeat', part, least: 1 };
      else if (this.here().kind === 'tag') part = { kind: 'tagged', part, tag: this.next().text.trim() };
      else break;
    }
    return part;
  }

  private bare(): Phrase | undefined {
    const token = this.here();
    switch (token.kind) {
      case 'word':
      case 'quoted':
        this.at += 1;
        if (token.text === '') this.note('empty', token, 'A quoted word needs something between its quotes.');
        return { kind: 'word', text: token.text };
      case 'rule':
        this.at += 1;
        if (token.text === 'NULL') return { kind: 'null' };
        if (token.text === 'VOID') return { kind: 'void' };
        return { kind: 'rule', name: token.text };
      case 'sign':
        if (this.takesSign('(')) return this.closed(')');
        if (this.takesSign('[')) return { kind: 'optional', part: this.closed(']') };
        return undefined;
      case 'tag':
      case 'weight':
      case 'end':
        return undefined;
    }
  }

  private closed(sign: string): Phrase {
    const part = this.alternatives();
    this.takeSign(sign);
    return part;
  }

  private here(): Token {
    const token = this.all[this.at] ?? this.all[this.all.length - 1];
    if (!token) throw new Error('a token list ends with its end token');
    return token;
  }

  private next(): Token {
    const token = this.here();
    this.at += 1;
    return token;
  }

  private takesWord(text: string): boolean {
    const isHere = this.here().kind === 'word' && this.here().text === text;
    if (isHere) this.at += 1;
    return isHere;
  }

  private takesSign(text: string): boolean {
    const isHere = this.here().kind === 'sign' && this.here().text === text;
    if (isHere) this.at += 1;
    return isHere;
  }

  private take(kind: Token['kind'], mend: string): Token {
    if (this.here().kind === kind) return this.next();
    this.lose('unexpected', mend);
    return this.here();
  }

  private takeSign(sign: string): void {
    if (!this.takesSign(sign)) this.lose(this.here().kind === 'end' ? 'unclosed' : 'unexpected', `Put "${sign}" here.`);
  }

  private note(code: JsgfIssueCode, { text, line, column }: Token, mend: string): void {
    this.issues.push({ code, line, column, given: text.slice(0, 40), mend });
  }

  /** Gives up this statement: nothing more of it is read or reported. */
  private lose(code: JsgfIssueCode, mend: string): Phrase {
    if (!this.isLost) this.note(code, this.here(), mend);
    this.isLost = true;
    while (!this.isAtEndOfStatement()) this.at += 1;
    return { kind: 'void' };
  }

  private isAtEndOfStatement(): boolean {
    const { kind, text } = this.here();
    return kind === 'end' || (kind === 'sign' && text === ';');
  }
}
