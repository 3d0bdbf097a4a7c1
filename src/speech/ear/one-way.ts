import type { WordGraph } from '../../core/language/word-graph';

/** A graph with these words in it and no other way. */
export const oneWay = (words: readonly string[]): WordGraph => ({
  states: [
    ...words.map((word, at) => ({ isEnd: false, next: new Map([[word, at + 1]]) })),
    { isEnd: true, next: new Map() },
  ],
});
