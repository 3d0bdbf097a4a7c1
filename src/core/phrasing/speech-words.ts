import type { UnitName } from '../fastening/quantity';

/** Everything of a language that is not the text of a reply: how its numbers, units, times and lists are put into words. */
export type SpeechWords = {
  readonly numbers: NumberWords;
  readonly fractions: FractionWords;
  readonly figures: FigureWords;
  readonly units: Readonly<Record<UnitName, Forms>>;
  readonly durations: { readonly between: string; readonly none: string };
  readonly clock: { readonly full: string; readonly half: string };
  readonly lists: { readonly between: string; readonly last: string; readonly empty: string };
  readonly bolts: Forms & { readonly run: Pair };
  /** Before a noun there is nothing of: "no bolts". */
  readonly none: string;
  readonly documents: DocumentWords;
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

/** What documents print that no voice can read. */
export type DocumentWords = {
  /** Whole words, as printed, their full stop included. */
  readonly abbreviations: ReadonlyMap<string, string>;
  /** Single signs. */
  readonly signs: ReadonlyMap<string, string>;
  /** Signs with a number on both sides. */
  readonly betweenNumbers: ReadonlyMap<string, string>;
  /** Words after which a bare "in" following a number is a word and no unit. */
  readonly notInches: ReadonlySet<string>;
};

/** Puts values into the places of a short template: `{hour} o'clock`. */
export const put = (template: string, values: Readonly<Record<string, string>>): string =>
  template.replace(/\{([a-z]+)\}/g, (whole, name: string) => values[name] ?? whole);
