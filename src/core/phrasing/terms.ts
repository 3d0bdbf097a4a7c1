/**
 * What has a word of its own in each language inside a formula, the name of a strength or a source: there it stands in
 * braces. The words are in grammars/<language>/replies.yaml, under "terms".
 */
export const TERMS = [
  // values of formulas
  'angle',
  'average',
  'below',
  'concentrate',
  'fed',
  'found',
  'height',
  'held',
  'highest',
  'leak',
  'least',
  'left',
  'lowest',
  'measured',
  'most',
  'needed',
  'new',
  'old',
  'over',
  'present',
  'room',
  'share',
  'spread',
  'strength',
  'stretch',
  'tight',
  'wanted',
  'zero',
  // strengths
  'class',
  'grade',
  // sources that are no citation
  'short-form',
  'vdi-2230',
  'elastic-textbook',
  'elastic-ratio',
  'same-tension',
  'common-practice',
  'volume-balance',
  'limit-leaves',
  'between-rows',
  'engine-handbook',
  'reprinted-table',
] as const;

export type Term = (typeof TERMS)[number];

export const isTerm = (name: string): name is Term => TERMS.some((term) => term === name);

const BRACED = /\{([a-z][a-z0-9-]*)\}/g;

/** The names in braces, in their order. */
export const termsIn = (text: string): readonly string[] => [...text.matchAll(BRACED)].map((found) => found[1] ?? '');

/** The text with the words of a language in the places of its terms. */
export const withTerms = (text: string, words: Readonly<Record<Term, string>>): string =>
  text.replace(BRACED, (whole, name: string) => (isTerm(name) ? words[name] : whole));
