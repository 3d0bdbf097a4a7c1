import { type Mend, mend } from '../../mend';
import type { JsgfIssue, JsgfIssueCode } from './issue';
import type { Token } from './tokens';

/**
 * Walks over tokens in panic mode: the first thing that cannot be read is reported, the rest of its statement is
 * stepped over without further reports, and reading goes on with the next statement.
 */
export class Cursor {
  /** True from the first issue that could not be read past to the end of its statement. */
  isLost = false;
  private at = 0;

  constructor(
    private readonly all: readonly Token[],
    private readonly issues: JsgfIssue[],
  ) {}

  here(): Token {
    const token = this.all[Math.min(this.at, this.all.length - 1)];
    if (!token) throw new Error('a token list ends with its end token');
    return token;
  }

  next(): Token {
    const token = this.here();
    this.at += 1;
    return token;
  }

  takesWord(text: string): boolean {
    return this.takes('word', text);
  }

  takesSign(text: string): boolean {
    return this.takes('sign', text);
  }

  take(kind: Token['kind'], how: Mend): Token {
    if (this.here().kind === kind) return this.next();
    this.lose('unexpected', how);
    return this.here();
  }

  takeSign(sign: string): void {
    if (!this.takesSign(sign))
      this.lose(this.here().kind === 'end' ? 'unclosed' : 'unexpected', mend('put-sign', sign));
  }

  /** Reports something that can be read past. */
  note(code: JsgfIssueCode, { text, line, column }: Token, how: Mend): void {
    if (!this.isLost) this.issues.push({ code, line, column, given: text.slice(0, 40), mend: how });
  }

  /** Gives up this statement. */
  lose(code: JsgfIssueCode, how: Mend): void {
    this.note(code, this.here(), how);
    this.isLost = true;
    while (!this.isAtEndOfStatement()) this.at += 1;
  }

  /** Reading starts afresh behind a statement that was given up. */
  leaveStatement(): void {
    if (this.isLost) this.takesSign(';');
    this.isLost = false;
  }

  private takes(kind: Token['kind'], text: string): boolean {
    const isHere = this.here().kind === kind && this.here().text === text;
    if (isHere) this.at += 1;
    return isHere;
  }

  private isAtEndOfStatement(): boolean {
    const { kind, text } = this.here();
    return kind === 'end' || (kind === 'sign' && text === ';');
  }
}
