import type { LiveGrammar, Phrase, RuleBook } from './grammar';
import { all } from './jsgf/references';
import type { Lexicon } from './sounds/lexicon';
import { wordGraph } from './word-graph';

/** The words of a phrase, each once, references not followed. */
export const vocabulary = (phrase: Phrase): readonly string[] => [
  ...new Set(all(phrase).flatMap((part) => (part.kind === 'word' ? [part.text] : []))),
];

/** Every word of a language's grammar files. Words of documents come on top; see `liveVocabulary`. */
export const bookVocabulary = (book: RuleBook): readonly string[] => [
  ...new Set([...book.rules.values()].flatMap(vocabulary)),
];

/** Every word that can be said now. */
export const liveVocabulary = (live: LiveGrammar): readonly string[] => [
  ...new Set(wordGraph(live).states.flatMap((state) => [...state.next.keys()])),
];

/** Words that none of the lexicons can pronounce. A recogniser refuses a grammar with such a word. */
export const unpronounceable = (words: readonly string[], lexicons: readonly Lexicon[]): readonly string[] =>
  words.filter((word) => !lexicons.some((lexicon) => lexicon.has(word)));
