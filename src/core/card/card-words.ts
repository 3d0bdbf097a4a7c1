/** The words of a job card by key; `{name}` is filled in. A language gives all of them, as `card-` and the key. */
export const CARD_KEYS = [
  'title',
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
  'rules',
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

/** The words of the card among the texts of a language's screens; the tests hold that all are there. */
export const cardWordsOf = (texts: Readonly<Record<string, unknown>>): CardWords =>
  // Every key is set by the line below.
  Object.fromEntries(CARD_KEYS.map((key) => [key, String(texts[`card-${key}`])])) as CardWords;

/** The words of a key with its names filled; a name that is not given stays to be seen. */
export const say = (words: CardWords, key: CardKey, names: Readonly<Record<string, string>> = {}): string =>
  words[key].replace(/\{(\w+)\}/g, (whole, name: string) => names[name] ?? whole);
