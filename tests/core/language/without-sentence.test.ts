import { describe, expect, test } from 'vitest';
import { oneOf, optional, seq, VOID, word } from '../../../src/core/language/phrase';
import { phraseGraph, type WordGraph, withoutSentence } from '../../../src/core/language/word-graph';

const graph = phraseGraph(
  seq([word('bolt'), oneOf([word('six'), word('seven')]), optional(word('is')), oneOf([word('done'), word('soft')])]),
  () => VOID,
);

function sentences({ states }: WordGraph, at = 0): readonly string[] {
  const state = states[at];
  if (!state) return [];
  const on = [...state.next].flatMap(([text, to]) =>
    sentences({ states }, to).map((rest) => (rest === '' ? text : `${text} ${rest}`)),
  );
  return state.isEnd ? ['', ...on] : on;
}

describe('a graph without one sentence', () => {
  const all = sentences(graph);

  test.each(all)('has every other one: without "%s"', (gone) => {
    const left = sentences(withoutSentence(graph, gone.split(' ')));
    expect([...left].sort()).toEqual(all.filter((one) => one !== gone).sort());
  });

  test('may lose several, one after another', () => {
    const [first = '', second = '', ...others] = all;
    const left = withoutSentence(withoutSentence(graph, first.split(' ')), second.split(' '));
    expect([...sentences(left)].sort()).toEqual([...others].sort());
  });

  test.each(['bolt', 'bolt eight done', 'bolt six done done', ''])(
    'is the same without "%s", which it has not',
    (gone) => {
      expect(withoutSentence(graph, gone.split(' '))).toEqual(graph);
    },
  );
});
