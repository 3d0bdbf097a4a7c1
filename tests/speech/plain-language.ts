import type { LiveCommand, LiveGrammar, Manner, Phrase } from '../../src/core/language/grammar';
import type { EarLanguage } from '../../src/speech/ear/armed-grammar';

/**
 * A language that knows only listed sentences: enough to try the ear without the product's grammar, and slow on purpose,
 * since everything is found by looking through the list.
 */
export const plainLanguage: EarLanguage = {
  toJsgf: (live, { filler, decoys }) => {
    const loop = filler ? [`/${filler.weight}/ (${filler.phones.join(' | ')})+`] : [];
    const said = [...sentences(live).map(({ words }) => words), ...decoys].map((words) => `/1/ ${words}`);
    return `#JSGF V1.0; grammar plain; public <said> = ${[...said, ...loop].join(' | ')};`;
  },
  interpret: (live, words) => {
    const rules = sentences(live).filter((sentence) => sentence.words === words);
    const [first] = rules;
    if (!first) return { kind: 'nothing' };
    if (rules.length > 1) return { kind: 'ambiguous', rules: rules.map(({ rule }) => rule) };
    return { kind: 'command', rule: first.rule, manner: first.manner, slots: {} };
  },
  extendable: (live, words) => sentences(live).some((sentence) => sentence.words.startsWith(`${words} `)),
};

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

function sentences(live: LiveGrammar): readonly { rule: string; manner: Manner; words: string }[] {
  return live.commands.map(({ rule, manner, phrase }) => ({ rule, manner, words: wordsIn(phrase).join(' ') }));
}

function wordsIn(phrase: Phrase): readonly string[] {
  if (phrase.kind === 'word') return [phrase.text];
  if (phrase.kind === 'seq') return phrase.parts.flatMap(wordsIn);
  throw new Error(`a listed sentence has words in a row, not ${phrase.kind}`);
}
