import type { LiveGrammar } from '../../core/language/grammar';
import { withKnownWords } from '../../core/language/known-words';
import { toPhraseList } from '../../core/language/to-phrases';
import { wordGraph } from '../../core/language/word-graph';
import { OTHER } from './frame-messages';

/** What the recogniser is to listen for under one revision; `missing` are the words the model does not know. */
export type PhraseList = {
  readonly revision: string;
  readonly phrases: readonly string[];
  readonly missing: readonly string[];
};

/**
 * The phrases of a grammar that the model can hear. The library drops an unknown word and keeps the rest of the
 * phrase, which would turn "bolt seven done" into "bolt done"; here whole ways of saying a thing are left out instead.
 */
export function phrasesFor(live: LiveGrammar, vocabulary: ReadonlySet<string>): PhraseList {
  const asked = wordGraph(live).states.flatMap(({ next }) => [...next.keys()]);
  const missing = missingWords(asked, vocabulary);
  const known = withKnownWords(live, (word) => vocabulary.has(word));
  const phrases = toPhraseList(known.live).filter((phrase) => phrase !== OTHER || vocabulary.has(OTHER));
  return { revision: live.revision, phrases, missing };
}

/** Words of `asked` that the model does not know, each once, sorted. */
export function missingWords(asked: Iterable<string>, vocabulary: ReadonlySet<string>): readonly string[] {
  return [...new Set(asked)].filter((word) => !vocabulary.has(word)).sort();
}
