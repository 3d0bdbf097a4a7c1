import type { UnitName } from '../fastening/quantity';
import type { Term } from './terms';
import type { WordTable } from './word-table';

/** Everything of a language that is not the text of a reply: how its numbers, units, times and lists are put into words. */
export type SpeechWords = {
  readonly numbers: NumberWords;
  readonly fractions: FractionWords;
  readonly figures: FigureWords;
  readonly units: Readonly<Record<UnitName, Forms>>;
  readonly durations: { readonly between: string; readonly none: string };
  readonly clock: { readonly full: Forms; readonly half: Forms };
  readonly lists: { readonly between: string; readonly last: string; readonly empty: string };
  readonly bolts: Forms & { readonly run: Pair };
  /** Before a noun there is nothing of: "no bolts". */
  readonly none: string;
  /** Words that a listener expects a breath before. */
  readonly breath: readonly string[];
  readonly documents: DocumentWords;
  readonly terms: Readonly<Record<Term, string>>;
};

/** Two words or templates by number. */
export type Forms = { readonly one: string; readonly many: string };

/** What is said and what is shown, where the two differ. */
export type Pair = { readonly say: string; readonly show: string };

export type NumberWords = {
  /** 0 to 99, each as it is said. */
  readonly belowHundred: readonly string[];
  /** From the largest to a hundred. */
  readonly scales: readonly Scale[];
  /** 0 to 9 where a number is said digit by digit. */
  readonly digits: readonly string[];
  readonly point: string;
  readonly minus: string;
  /** The sign before decimals, as shown. */
  readonly pointSign: string;
  /** The sign between thousands, as documents of this language print it. */
  readonly thousandsSign: string;
  /** Which amounts take the singular: only one, or everything below two. */
  readonly singular: 'one' | 'below-two';
};

/** A thousand: `one` of it, `many` with `{n}`, and what joins the rest, which may differ below a hundred. */
export type Scale = Forms & { readonly worth: number; readonly joint: string; readonly smallJoint: string };

export type FractionWords = {
  /** By denominator: "half", "halves". */
  readonly bottoms: ReadonlyMap<number, Forms>;
  /** `{top} {bottom}` */
  readonly part: string;
  /** `{top} over {bottom}`, for a denominator without a word. */
  readonly other: string;
  /** `{whole} and {part}` */
  readonly mixed: string;
};

export type FigureWords = {
  /** `{from} to {to}` */
  readonly range: string;
  /** `{value} plus or minus {by}` */
  readonly tolerance: string;
};

/** What documents print that no voice can read, and words that voices read wrongly. */
export type DocumentWords = {
  /** Whole words as printed, their full stop included. */
  readonly abbreviations: WordTable;
  /** Only before a number: "No. 2". */
  readonly beforeNumbers: WordTable;
  /** Signs with a number on both sides: "M10x1.5", "50:50". */
  readonly betweenNumbers: WordTable;
  /** Numbers that are more than their figures: "1st". */
  readonly ordinals: WordTable;
  readonly signs: WordTable;
  /** Symbols of units that stand without a number: "the value in N·m". */
  readonly bareSymbols: WordTable;
  /** Words that a voice reads wrongly, as they must be spelt for it. */
  readonly respelt: WordTable;
  /** Nouns before which a unit stays in the singular: "ten millimetre socket". */
  readonly afterUnit: ReadonlySet<string>;
  /** Words after which "in" behind a whole number is a word and no unit: "4 in each side". */
  readonly notInches: ReadonlySet<string>;
};

/** Puts values into the places of a short template: `{hour} o'clock`. */
export const put = (template: string, values: Readonly<Record<string, string>>): string =>
  template.replace(/\{([a-z]+)\}/g, (whole, name: string) => values[name] ?? whole);
