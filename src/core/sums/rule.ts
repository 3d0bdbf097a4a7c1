import type { Celsius, Dimension, Litres, Percent, UnitName } from '../fastening/quantity';
import type { Reply } from '../phrasing/reply';

/** A reading as it was given, with its name in the document. */
export type NamedReading = {
  readonly id: string;
  readonly say: string;
  readonly value: number;
  readonly unit: UnitName;
};

/** What a rule makes of the readings, ready to be said: the result first, then whose rule it is and how it was reached. */
export type Answer = readonly Reply[];

/**
 * A sum that a document asks for, under the name it gives the rule. Rules differ between makers, so their figures are
 * the document's; the sums are built with it, since nothing that can be done before a document is read needs them.
 */
export type Rule = {
  readonly id: string;
  readonly say: string;
  readonly whose: string;
  /** Its figures and what it says to do, as the document prints them: for the card and for whoever reads the document. */
  readonly figures: readonly string[];
} & (
  | {
      readonly kind: 'readings';
      /** What the readings must be: any number of them, pairs, or so many. */
      readonly needs: { readonly dimensions: readonly Dimension[]; readonly count: 'any' | 'pairs' | number };
      /** Steps whose readings go into it as well. */
      readonly steps?: readonly string[];
      readonly workOut: (here: readonly NamedReading[], at: (step: string) => readonly NamedReading[]) => Answer;
    }
  | {
      readonly kind: 'coolant';
      /** What a share of concentrate protects to. */
      readonly freezing: (share: Percent) => Answer;
      readonly mixFor: (cold: Celsius) => Answer;
      /** What goes into the room there is; null where the strength of the rest was not told. */
      readonly concentrate: (room: Litres, present: Percent | null) => Answer;
    }
);

/** What the document says of a rule, whatever its kind. */
export type RuleName = Pick<Rule, 'id' | 'say' | 'whose' | 'figures'>;

export type ReadingsRule = Rule & { readonly kind: 'readings' };
export type CoolantRule = Rule & { readonly kind: 'coolant' };
