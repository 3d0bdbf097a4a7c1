import type { SpeechWords } from './speech-words';

/** Where a reader of the language would breathe inside a long sentence, and where not. Words in lower case. */
export type Breath = {
  /** Words that a listener expects a breath before: "and", "then". */
  readonly before: ReadonlySet<string>;
  /** Words that belong to the figure beside them: "forty | newton metres" is heard as two things. */
  readonly figures: ReadonlySet<string>;
};

/** A voice that knows no language breathes at stops and spaces only. */
export const PLAIN_BREATH: Breath = { before: new Set(), figures: new Set() };

/** The words of figures are those that numbers and units are said with, as the voice spells them. */
export function breathOf({ breath, numbers, fractions, units, documents }: SpeechWords): Breath {
  const bottoms = [...fractions.bottoms.values()].flatMap(({ one, many }) => [one, many]);
  const said = [
    ...numbers.belowHundred,
    ...numbers.digits,
    ...numbers.scales.flatMap(({ one, many }) => [one, many.replace('{n}', '')]),
    numbers.point,
    ...bottoms,
  ].flatMap(wordsOf);
  // Only how a unit begins: the "of" in "inches of mercury" stands before many other things.
  const heads = Object.values(units).flatMap(({ one, many }) => [one, many].map((form) => wordsOf(form)[0] ?? ''));
  const figures = new Set([...said, ...heads]);
  for (const [word, spelt] of documents.respelt.words) if (figures.has(word)) figures.add(wordsOf(spelt)[0] ?? '');
  return { before: new Set(breath), figures };
}

const wordsOf = (text: string): readonly string[] => text.toLowerCase().split(/\s+/).filter(Boolean);
