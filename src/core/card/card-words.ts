/** The words of a job card by key; `{name}` is filled in. A language gives all of them. */
export const CARD_KEYS = [
  'card',
  'demonstration',
  'source',
  'edition',
  'makers-first',
  'job-number',
  'date',
  'mechanic',
  'tools',
  'settings',
  'single-use',
  'consumables',
  'measured',
  'reused',
  'fills',
  'stowage',
  'timers',
  'limits',
  'socket',
  'drive',
  'range',
  'order',
  'generated',
  'only-if',
  'window',
  'swings',
  'repeat',
  'slacken',
  'wait',
  'hours',
  'minutes',
  'least',
  'most',
  'whose',
] as const;

export type CardKey = (typeof CARD_KEYS)[number];
export type CardWords = Readonly<Record<CardKey, string>>;

/** The words of a key with its names filled; a name that is not given stays to be seen. */
export const say = (words: CardWords, key: CardKey, names: Readonly<Record<string, string>> = {}): string =>
  words[key].replace(/\{(\w+)\}/g, (whole, name: string) => names[name] ?? whole);
