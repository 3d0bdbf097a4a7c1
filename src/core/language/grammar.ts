/**
 * A phrase of the JSGF object model (W3C Note, 5 June 2000), closed: each consumer is one exhaustive function.
 * Weights are kept on alternatives; tags sit on the part they follow.
 */
export type Phrase =
  | { readonly kind: 'word'; readonly text: string }
  | { readonly kind: 'seq'; readonly parts: readonly Phrase[] }
  | { readonly kind: 'oneOf'; readonly parts: readonly Phrase[]; readonly weights?: readonly number[] }
  | { readonly kind: 'optional'; readonly part: Phrase }
  | { readonly kind: 'repeat'; readonly part: Phrase; readonly least: 0 | 1 }
  | { readonly kind: 'tagged'; readonly part: Phrase; readonly tag: string }
  | { readonly kind: 'rule'; readonly name: string }
  /** `<NULL>` matches nothing said; `<VOID>` can never be said. */
  | { readonly kind: 'null' }
  | { readonly kind: 'void' };

/** Rules by name. A JSGF file's public rules are the commands; the others are their parts. */
export type RuleBook = {
  readonly rules: ReadonlyMap<string, Phrase>;
  readonly publicRules: readonly string[];
};

/**
 * How dearly a command must be heard (DESIGN.md of the project: who may decide what).
 * `stop` has its own loose bar, because a false stop is cheap and a missed one is not.
 */
export type Manner = 'harmless' | 'progress' | 'critical' | 'stop';

/** The rule references of the command grammar that the state fills. */
export const SLOT_NAMES = [
  'answer',
  'bolt',
  'clock',
  'cold',
  'degrees',
  'end',
  'field',
  'from',
  'gauged',
  'grade',
  'item',
  'length',
  'line',
  'part',
  'person',
  'place',
  'reading',
  'reason',
  'room',
  'setting',
  'share',
  'size',
  'thread',
  'to',
  'unit',
  'wrench',
] as const;

/** The numbers of one unit that make sense: "two thou" where the step is in millimetres. */
export type UnitScale = {
  readonly least: number;
  readonly most: number;
  readonly decimals: number;
  readonly units: readonly string[];
};

/** What can fill a slot now. The state names it, the language builds the phrase. */
export type SlotDomain =
  /** Whole numbers, e.g. the bolts of this pattern. */
  | { readonly kind: 'integers'; readonly values: readonly number[] }
  /** A number said in full, digit by digit or with "point"; `units` may follow it, or must where `unitNeeded`. */
  | {
      readonly kind: 'reading';
      readonly least: number;
      readonly most: number;
      readonly decimals: number;
      readonly units: readonly string[];
      readonly unitNeeded: boolean;
      /** The same thing on scales of other units, each with its own range and decimals. Their units are always said. */
      readonly also?: readonly UnitScale[];
      /** It opens its sentence: without its unit it is any number, and not even the shape of a command. */
      readonly opens?: true;
    }
  /** Some of the things the grammar file itself names in the rule of the slot, e.g. units or reasons; their ids. */
  | { readonly kind: 'named'; readonly ids: readonly string[] }
  /** One of a few phrases from the document or the log, e.g. read-back answers or loose ends. */
  | { readonly kind: 'options'; readonly options: readonly { readonly id: string; readonly say: readonly string[] }[] };

/** What was put in a slot. A reading keeps the unit as said, or null where none was. */
export type SlotValue =
  | { readonly kind: 'integer'; readonly value: number }
  | { readonly kind: 'reading'; readonly value: number; readonly unit: string | null }
  | { readonly kind: 'option'; readonly id: string };

/** One thing that makes sense to say now: a public rule of the grammar file, its slots filled by the state. */
export type Offer = {
  readonly rule: string;
  readonly manner: Manner;
  readonly slots: Readonly<Record<string, SlotDomain>>;
};

/** Everything that makes sense to say now, under the revision that keys what words mean. Plain data: it crosses to workers. */
export type LiveGrammar = {
  readonly revision: string;
  readonly commands: readonly LiveCommand[];
  /** Parts that the commands refer to, slots included. */
  readonly parts: Readonly<Record<string, Phrase>>;
};

export type LiveCommand = Offer & { readonly phrase: Phrase };

/** The meaning of some words in a live grammar. Anything that is not exactly one command is not a command. */
export type Meaning =
  | {
      readonly kind: 'command';
      readonly rule: string;
      readonly manner: Manner;
      readonly slots: Readonly<Record<string, SlotValue>>;
    }
  /**
   * The shape of a command, with a slot outside its domain: "bolt forty" on a ten-bolt pattern. `given` is in
   * figures, with the id of the unit where one was said: "40", "40 lbf·ft".
   */
  | { readonly kind: 'almost'; readonly rule: string; readonly slot: string; readonly given: string }
  | { readonly kind: 'ambiguous'; readonly rules: readonly string[] }
  | { readonly kind: 'nothing' };
