import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { extendable, interpret } from '../../../src/core/language/interpret';
import { liveGrammar } from '../../../src/core/language/live-grammar';
import { samples } from '../../../src/core/language/sample';
import { liveVocabulary } from '../../../src/core/language/vocabulary';
import { wordGraph } from '../../../src/core/language/word-graph';
import { english, everything, offerOf, readingOf, wellFormed } from '../../grammars/en/english';

/** Everything but the wide ranges with decimals, whose graph is wider than their domain on purpose. */
const exact = wellFormed(
  liveGrammar(
    english,
    english.publicRules.map((rule) => {
      const { slots, ...offer } = offerOf(rule);
      const narrow = Object.entries(slots).map(([slot, domain]) =>
        domain.kind === 'reading' ? [slot, readingOf(1, 300, 0, domain.units)] : [slot, domain],
      );
      return { ...offer, slots: Object.fromEntries(narrow) };
    }),
    'exact',
  ),
);
const { states } = wordGraph(exact);

/** The state of the word graph after some words, walked without the reader of words. */
function stateAfter(words: readonly string[]) {
  let at: number | undefined = 0;
  for (const word of words) at = at === undefined ? undefined : states[at]?.next.get(word);
  return at === undefined ? undefined : states[at];
}

const sentence = fc.constantFrom(...samples(exact, 2000).map(({ words }) => words.split(' ')));
const stray = fc.constantFrom(...liveVocabulary(exact), 'right', 'yes');
/** A sentence with a word dropped, doubled, replaced or put in. */
const nearSentence = fc.tuple(sentence, fc.nat(), stray, fc.nat({ max: 3 })).map(([words, place, word, change]) => {
  const at = place % words.length;
  const [kept, put] = [
    [1, []],
    [0, [words[at] ?? '']],
    [1, [word]],
    [0, [word]],
  ][change] as [number, string[]];
  return [...words.slice(0, at), ...put, ...words.slice(at + kept)];
});

describe('the reader of words and the word graph, made in two ways, agree', () => {
  test('about what is a command', () => {
    fc.assert(
      fc.property(nearSentence, (words) => {
        const { kind } = interpret(exact, words.join(' '));
        expect([words, kind === 'command' || kind === 'ambiguous']).toEqual([words, stateAfter(words)?.isEnd ?? false]);
      }),
      { numRuns: 1000 },
    );
  });

  test('about what may go on', () => {
    fc.assert(
      fc.property(nearSentence, fc.nat({ max: 12 }), (words, count) => {
        const begun = words.slice(0, count);
        expect([begun, extendable(exact, begun.join(' '))]).toEqual([begun, (stateAfter(begun)?.next.size ?? 0) > 0]);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('no text makes the reader throw', () => {
  test('any characters, long or short', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 120, unit: 'grapheme' }), (text) => {
        expect(['command', 'almost', 'ambiguous', 'nothing']).toContain(interpret(everything, text).kind);
        expect(typeof extendable(everything, text)).toBe('boolean');
      }),
      { numRuns: 300 },
    );
  });

  test.each([
    ['numbers without end', 'one '.repeat(200)],
    ['hundreds without end', 'set at one hundred '.repeat(60)],
    ['very large figures', `bolt ${'9'.repeat(400)} done`],
  ])('%s', (_name, text) => {
    expect(interpret(everything, text)).toEqual({ kind: 'nothing' });
  });
});
