import { fail, ok, type Result } from '../../result';

/** The phones of the CMU dictionary, without stress: the set of the acoustic model. */
export const PHONES = [
  'AA',
  'AE',
  'AH',
  'AO',
  'AW',
  'AY',
  'B',
  'CH',
  'D',
  'DH',
  'EH',
  'ER',
  'EY',
  'F',
  'G',
  'HH',
  'IH',
  'IY',
  'JH',
  'K',
  'L',
  'M',
  'N',
  'NG',
  'OW',
  'OY',
  'P',
  'R',
  'S',
  'SH',
  'T',
  'TH',
  'UH',
  'UW',
  'V',
  'W',
  'Y',
  'Z',
  'ZH',
] as const;
export type Phone = (typeof PHONES)[number];

type Pronunciation = readonly Phone[];

/** All known pronunciations of each word, at least one, no two alike. */
export type Lexicon = ReadonlyMap<string, readonly Pronunciation[]>;

export type LexiconIssue = {
  readonly code: 'no-phones' | 'unknown-phone';
  readonly line: number;
  readonly given: string;
  readonly mend: string;
};

const KNOWN: ReadonlySet<string> = new Set(PHONES);
const isPhone = (text: string): text is Phone => KNOWN.has(text);

/**
 * Reads a pronunciation dictionary in the plain form of the CMU dictionary: a word and its phones on each line,
 * further pronunciations on further lines, with or without "(2)" after the word. Stress digits are dropped. Lines
 * that begin with "#" or ";;" are comments.
 */
export function parseLexicon(text: string): Result<Lexicon, readonly LexiconIssue[]> {
  const issues: LexiconIssue[] = [];
  const lexicon = new Map<string, Pronunciation[]>();
  for (const [index, raw] of text.split('\n').entries()) {
    const line = index + 1;
    const given = raw.trim();
    if (given === '' || given.startsWith('#') || given.startsWith(';;')) continue;
    const [marked = '', ...rest] = given.split(/\s+/);
    const phones = rest.map((phone) => phone.replace(/\d$/, ''));
    const strange = phones.find((phone) => !isPhone(phone));
    if (phones.length === 0) {
      issues.push({ code: 'no-phones', line, given, mend: 'Write the phones after the word: "fife F AY F".' });
    } else if (strange !== undefined) {
      issues.push({ code: 'unknown-phone', line, given: strange, mend: `Use the phones ${PHONES.join(' ')}.` });
    } else {
      const word = marked.replace(/\(\d+\)$/, '').toLowerCase();
      const known = lexicon.get(word) ?? [];
      const spoken = phones.filter(isPhone);
      if (known.some((other) => other.join(' ') === spoken.join(' '))) continue;
      lexicon.set(word, [...known, spoken]);
    }
  }
  return issues.length > 0 ? fail(issues) : ok(lexicon);
}

/** The pronunciations of a word in several lexicons together. */
export function pronunciations(word: string, lexicons: readonly Lexicon[]): readonly Pronunciation[] {
  const all = lexicons.flatMap((lexicon) => lexicon.get(word) ?? []);
  return [...new Map(all.map((phones) => [phones.join(' '), phones])).values()];
}
