import { readFileSync } from 'node:fs';
import { languages, readSoundsFile, readTongue } from '../../src/cli/tongue-files';
import { GRADES } from '../../src/core/fastening/grade';
import { THREAD_NAMES } from '../../src/core/fastening/thread-names';
import type { LiveGrammar, Meaning, Offer, RuleBook, SlotDomain } from '../../src/core/language/grammar';
import { interpret } from '../../src/core/language/interpret';
import { liveGrammar } from '../../src/core/language/live-grammar';
import { type Lexicon, parseLexicon } from '../../src/core/language/sounds/lexicon';
import type { Sounds } from '../../src/core/language/sounds/sounds';
import type { Result } from '../../src/core/result';
import type { Tongue } from '../../src/core/tongue';

/** What a language's own folder of tests gives: everyday words for the slots, and what is known of its sounds. */
export type Samples = {
  readonly answers: readonly string[];
  readonly ends: readonly string[];
  readonly items: readonly string[];
  readonly parts: readonly string[];
  readonly wrenches: readonly string[];
  /** What a reading is said after. */
  readonly reading: string;
  /** The only words that may be a whole command. */
  readonly lone: readonly string[];
  /** Pairs of bolts up to ten that sound alike: the echo of the number and taking it back hold them apart. */
  readonly alike: readonly string[];
  /**
   * Values that sound alike in some place of a shipped procedure. The reply names each at once, so that the ear is
   * corrected by "take that back" before the next word.
   */
  readonly namedByTheReply: readonly string[];
};

export type LanguageUnderTest = {
  readonly code: string;
  readonly tongue: Tongue;
  readonly book: RuleBook;
  readonly sounds: Sounds;
  /** The model's own dictionary and the language's lexicon. */
  readonly lexicons: readonly Lexicon[];
  readonly samples: Samples;
  /** An offer of a command with everyday domains in its slots. */
  readonly offerOf: (rule: string, domains?: Readonly<Record<string, SlotDomain>>) => Offer;
  /** Every command live at once: more than any state offers, so the hardest case for telling them apart. */
  readonly everything: LiveGrammar;
  readonly hear: (words: string) => Meaning;
};

const root = `${import.meta.dirname}/../..`;

/** The value, or a test failure that shows the issues. */
export function wellFormed<T>(result: Result<T, unknown>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.error, null, 1));
  return result.value;
}

export const upTo = (most: number): SlotDomain => ({
  kind: 'integers',
  values: Array.from({ length: most }, (_, index) => index + 1),
});

export const readingOf = (
  least: number,
  most: number,
  decimals = 0,
  units: readonly string[] = [],
  unitNeeded = false,
): SlotDomain => ({ kind: 'reading', least, most, decimals, units, unitNeeded });

export const oneOfThese = (...texts: readonly string[]): SlotDomain => ({
  kind: 'options',
  options: texts.map((text) => ({ id: text.replaceAll(' ', '-'), say: [text] })),
});

/** What a ten-bolt head with a few loose ends would put in each slot. */
const domainsOf = ({ answers, ends, items, parts, wrenches }: Samples): Readonly<Record<string, SlotDomain>> => ({
  answer: oneOfThese(...answers),
  bolt: upTo(10),
  clock: upTo(12),
  cold: readingOf(1, 70, 0, ['degC']),
  degrees: { kind: 'integers', values: Array.from({ length: 72 }, (_, index) => 5 * index + 5) },
  end: oneOfThese(...ends),
  from: upTo(10),
  gauged: { kind: 'reading', least: 60, most: 200, decimals: 0, units: ['psi'], unitNeeded: true, opens: true },
  grade: { kind: 'named', ids: GRADES },
  item: oneOfThese(...items),
  length: readingOf(0.25, 12, 2, ['in', 'mm'], true),
  line: upTo(9),
  part: oneOfThese(...parts),
  person: oneOfThese('robin'),
  place: upTo(6),
  reading: readingOf(60, 200, 0, ['psi']),
  room: readingOf(0.1, 99, 1, ['L'], true),
  reason: { kind: 'named', ids: ['not-fitted-here', 'waiting-for-a-part'] },
  setting: readingOf(1, 999, 1, ['N·m', 'lbf·ft']),
  share: readingOf(1, 100, 0, ['%'], true),
  size: { kind: 'named', ids: ['small', 'large', 'other'] },
  thread: { kind: 'named', ids: THREAD_NAMES },
  to: upTo(10),
  unit: { kind: 'named', ids: ['N·m', 'lbf·ft'] },
  wrench: oneOfThese(...wrenches),
});

/** A language with everything that the tests ask of it. */
export function languageUnderTest(code: string, samples: Samples): LanguageUnderTest {
  const tongue = readTongue(code);
  const { book, lexicon, profile, model } = tongue;
  const sounds = readSoundsFile(code);
  const words = `${root}/node_modules/soundswallower/model/${profile.model}/dict.txt`;
  const dictionary = wellFormed(parseLexicon(readFileSync(words, 'utf8'), model.phones));
  const everyday = domainsOf(samples);
  const offerOf: LanguageUnderTest['offerOf'] = (rule, domains = everyday) => {
    const text = JSON.stringify(book.rules.get(rule));
    const slots = Object.entries(domains).filter(([slot]) => text?.includes(`{"kind":"rule","name":"${slot}"}`));
    return { rule, manner: 'progress', slots: Object.fromEntries(slots) };
  };
  const offers = book.publicRules.map((rule) => offerOf(rule));
  const everything = wellFormed(liveGrammar(book, offers, 'everything'));
  const hear = (words: string): Meaning => interpret(everything, words);
  return { code, tongue, book, sounds, lexicons: [dictionary, lexicon], samples, offerOf, everything, hear };
}

/** Every language there is. One without its own folder of tests fails here. */
export async function everyLanguage(): Promise<readonly LanguageUnderTest[]> {
  return Promise.all(
    languages().map(async (code) => {
      const { SAMPLES }: { SAMPLES: Samples } = await import(`./${code}/samples.ts`);
      return languageUnderTest(code, SAMPLES);
    }),
  );
}
