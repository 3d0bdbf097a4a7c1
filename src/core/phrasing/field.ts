import { type Mend, mend } from '../mend';
import type { ReplyIssue, ReplyIssueCode } from './reply-issue';

/**
 * A place in parsed plain data, read with all its issues collected: what is missing or of the wrong type is noted and
 * stood in for, so that one reading finds every fault of the file.
 */
export class Field {
  private constructor(
    readonly at: string,
    private readonly value: unknown,
    private readonly issues: ReplyIssue[],
  ) {}

  static root(value: unknown, issues: ReplyIssue[]): Field {
    return new Field('', value, issues);
  }

  blame(code: ReplyIssueCode, how: Mend, given = printed(this.value)): void {
    this.issues.push({ code, at: this.at, given, mend: how });
  }

  get isText(): boolean {
    return typeof this.value === 'string';
  }

  /** The keys of a mapping; anything else is an issue and has none. */
  keys(): readonly string[] {
    return Object.keys(this.mapping());
  }

  has(key: string): boolean {
    return Object.hasOwn(this.mapping(), key);
  }

  key(key: string): Field {
    const map = this.mapping();
    const at = this.at === '' ? key : `${this.at}.${key}`;
    if (!Object.hasOwn(map, key)) {
      this.issues.push({ code: 'missing-key', at, given: '', mend: mend('add-key', key) });
      return new Field(at, ABSENT, this.issues);
    }
    return new Field(at, map[key], this.issues);
  }

  /** Names every key that is not one of these. */
  only(known: readonly string[]): this {
    for (const key of this.keys())
      if (!known.includes(key)) this.key(key).blame('unknown-key', mend('use-one-of', known.join(', ')), key);
    return this;
  }

  items(): readonly Field[] {
    if (Array.isArray(this.value))
      return this.value.map((item: unknown, i) => new Field(`${this.at}.${i}`, item, this.issues));
    if (this.value !== ABSENT) this.blame('wrong-type', mend('list'));
    return [];
  }

  /** A text that is not empty; spaces count, since joints between words are data too. */
  text(): string {
    if (typeof this.value === 'string' && this.value !== '') return this.value;
    if (this.value === '') this.blame('blank-text', mend('words-or-nothing'));
    else if (this.value !== ABSENT) this.blame('wrong-type', mend('text'));
    return '';
  }

  number(): number {
    if (typeof this.value === 'number' && Number.isFinite(this.value)) return this.value;
    if (this.value !== ABSENT) this.blame('wrong-type', mend('number'));
    return Number.MAX_SAFE_INTEGER;
  }

  truth(): boolean {
    if (typeof this.value === 'boolean') return this.value;
    if (this.value !== ABSENT) this.blame('wrong-type', mend('truth'));
    return false;
  }

  texts(): readonly string[] {
    return this.items().map((item) => item.text());
  }

  private mapping(): Readonly<Record<string, unknown>> {
    if (isMapping(this.value)) return this.value;
    if (this.value !== ABSENT) this.blame('wrong-type', mend('mapping'));
    return {};
  }
}

/** Stands for a key that is not there, whose absence has been noted already. */
const ABSENT = Symbol('absent');

const isMapping = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const printed = (value: unknown): string =>
  typeof value === 'symbol' ? '' : (JSON.stringify(value) ?? '').slice(0, 120);
