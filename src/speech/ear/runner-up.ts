import { withoutSentence } from '../../core/language/word-graph';
import type { ArmedGrammar } from './armed-grammar';
import { commandWords, type Decoder, type Hypothesis } from './decoder';

/** Sentences of the same meaning that are passed over before the search for another meaning is given up. */
const MOST_SEARCHES = 2;

/**
 * How far the best sentence of any other meaning is behind, in the engine's unit over the whole utterance: "bolt six done" in
 * noise may fit no better than "bolt seven done". Infinite where nothing else fits. Leaves its own search in the decoder.
 */
export function leadOf(
  words: string,
  { score }: Hypothesis,
  sound: Float32Array,
  decoder: Decoder,
  grammar: ArmedGrammar,
): number {
  let commands = withoutSentence(grammar.graph, words.split(' '));
  for (let search = 0; search < MOST_SEARCHES; search += 1) {
    if (!decoder.search({ commands, decoys: [], filler: null }).ok) break;
    const other = decoder.decodeWhole(sound);
    const otherWords = commandWords(other);
    if (!otherWords) break;
    if (!grammar.sameMeaning(words, otherWords)) return score - other.score;
    commands = withoutSentence(commands, otherWords.split(' '));
  }
  return Number.POSITIVE_INFINITY;
}
