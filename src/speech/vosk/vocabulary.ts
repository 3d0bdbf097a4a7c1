import type { LiveGrammar, Phrase } from '../../core/language/grammar';
import { toPhraseList } from '../../core/language/to-phrases';
import { wordGraph } from '../../core/language/word-graph';
import { assertNever } from '../../core/result';
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
  const known = missing.length === 0 ? live : without(live, new Set(missing));
  const phrases = toPhraseList(known).filter((phrase) => phrase !== OTHER || vocabulary.has(OTHER));
  return { revision: live.revision, phrases, missing };
}

/** The same grammar with no way left of saying these words. */
function without(live: LiveGrammar, words: ReadonlySet<string>): LiveGrammar {
  const pruned = (phrase: Phrase): Phrase => {
    switch (phrase.kind) {
      case 'word':
        return words.has(phrase.text) ? { kind: 'void' } : phrase;
      case 'seq':
      case 'oneOf':
        return { ...phrase, parts: phrase.parts.map(pruned) };
      case 'optional':
      case 'repeat':
      case 'tagged':
        return { ...phrase, part: pruned(phrase.part) };
      case 'rule':
      case 'null':
      case 'void':
        return phrase;
      default:
        return assertNever(phrase);
    }
  };
  return {
    ...live,
    commands: live.commands.map((command) => ({ ...command, phrase: pruned(command.phrase) })),
    parts: Object.fromEntries(Object.entries(live.parts).map(([name, phrase]) => [name, pruned(phrase)])),
  };
}

/** Words of `asked` that the model does not know, each once, sorted. */
export function missingWords(asked: Iterable<string>, vocabulary: ReadonlySet<string>): readonly string[] {
  return [...new Set(asked)].filter((word) => !vocabulary.has(word)).sort();
}
