import { type Mend, mend } from '../../mend';
import { fail, ok, type Result } from '../../result';
import type { Phone } from './sounds';

type Pronunciation = readonly Phone[];

/** All known pronunciations of each word, at least one, no two alike. */
export type Lexicon = ReadonlyMap<string, readonly Pronunciation[]>;

export type LexiconIssue = {
  readonly code: 'no-phones' | 'unknown-phone';
  readonly line: number;
  readonly given: string;
  readonly mend: Mend;
};

/**
 * Reads a pronunciation dictionary in the plain form of the CMU dictionary: a word and its phones on each line,
 * further pronunciations on further lines, with or without "(2)" after the word. Stress digits are dropped. Lines
 * that begin with "#" or ";;" are comments. Phones are those of the language's acoustic model.
 */
export function parseLexicon(text: string, phones: readonly Phone[]): Result<Lexicon, readonly LexiconIssue[]> {
  const issues: LexiconIssue[] = [];
  const known: ReadonlySet<string> = new Set(phones);
  const lexicon = new Map<string, Pronunciation[]>();
  for (const [index, raw] of text.split('\n').entries()) {
    const line = index + 1;
    const given = raw.trim();
    if (given === '' || given.startsWith('#') || given.startsWith(';;')) continue;
    const [marked = '', ...rest] = given.split(/\s+/);
    const spoken = rest.map((phone) => phone.replace(/\d$/, ''));
    const strange = spoken.find((phone) => !known.has(phone));
    if (spoken.length === 0) {
      issues.push({ code: 'no-phones', line, given, mend: mend('phones-after') });
    } else if (strange !== undefined) {
      issues.push({ code: 'unknown-phone', line, given: strange, mend: mend('use-one-of', phones.join(' ')) });
    } else {
      const word = marked.replace(/\(\d+\)$/, '').toLowerCase();
      const others = lexicon.get(word) ?? [];
      if (others.some((other) => other.join(' ') === spoken.join(' '))) continue;
      lexicon.set(word, [...others, spoken]);
    }
  }
  return issues.length > 0 ? fail(issues) : ok(lexicon);
}

/** The pronunciations of a word in several lexicons together. */
export function pronunciations(word: string, lexicons: readonly Lexicon[]): readonly Pronunciation[] {
  const all = lexicons.flatMap((lexicon) => lexicon.get(word) ?? []);
  return [...new Map(all.map((phones) => [phones.join(' '), phones])).values()];
}
