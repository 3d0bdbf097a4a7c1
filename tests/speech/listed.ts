import type { LiveCommand, LiveGrammar, Manner, Phrase } from '../../src/core/language/grammar';

/** A live grammar of listed sentences, each its own command. */
export function listed(revision: string, manners: Readonly<Record<string, Manner>>): LiveGrammar {
  const commands = Object.entries(manners).map(
    ([words, manner]): LiveCommand => ({ rule: words, manner, slots: {}, phrase: phraseOf(words) }),
  );
  return { revision, commands, parts: {} };
}

const phraseOf = (words: string): Phrase => ({
  kind: 'seq',
  parts: words.split(' ').map((text) => ({ kind: 'word', text })),
});
