import { describe, expect, test } from 'vitest';
import type { LiveGrammar, Phrase } from '../../../src/core/language/grammar';
import { parseJsgf } from '../../../src/core/language/jsgf/parse-jsgf';
import { liveGrammar } from '../../../src/core/language/live-grammar';
import { toJsgf } from '../../../src/core/language/lower-jsgf';
import { samples } from '../../../src/core/language/sample';
import { toPhraseList } from '../../../src/core/language/to-phrases';
import { phraseGraph, type WordGraph, wordGraph } from '../../../src/core/language/word-graph';
import { english, everything, offerOf, wellFormed } from '../../grammars/en/english';

const few = wellFormed(
  liveGrammar(
    english,
    ['done', 'bolt-done', 'stop'].map((rule) => offerOf(rule)),
    'few',
  ),
);

function rulesOf(jsgf: string): ReadonlyMap<string, Phrase> {
  const file = wellFormed(parseJsgf(jsgf));
  return new Map(file.rules.map(({ name, phrase }) => [name, phrase]));
}

function graphOf(jsgf: string): WordGraph {
  const rules = rulesOf(jsgf);
  const rule = (name: string): Phrase => rules.get(name) ?? { kind: 'void' };
  return phraseGraph(rule('utterance'), rule);
}

/** Smallest automata of one language differ only in the numbers of their states: walk both at once. */
function sameLanguage(a: WordGraph, b: WordGraph): boolean {
  const twin = new Map([[0, 0]]);
  for (const [stateA, stateB] of twin) {
    const [one, other] = [a.states[stateA], b.states[stateB]];
    if (one?.isEnd !== other?.isEnd || one?.next.size !== other?.next.size) return false;
    for (const [word, toA] of one?.next ?? []) {
      const toB = other?.next.get(word);
      if (toB === undefined || (twin.get(toA) ?? toB) !== toB) return false;
      twin.set(toA, toB);
    }
  }
  return a.states.length === b.states.length;
}

const accepts = ({ states }: WordGraph, words: string): boolean => {
  let at = 0;
  for (const word of words.split(' ')) {
    const to = states[at]?.next.get(word);
    if (to === undefined) return false;
    at = to;
  }
  return states[at]?.isEnd ?? false;
};

describe('the grammar text for the embedded recogniser', () => {
  test.each<readonly [name: string, live: LiveGrammar]>([
    ['few commands', few],
    ['every command', everything],
  ])('says exactly what the live grammar says: %s', (_name, live) => {
    expect(sameLanguage(graphOf(toJsgf(live)), wordGraph(live))).toBe(true);
  });

  test('has one public rule, lower-case words, and neither tags nor imports', () => {
    const text = toJsgf(everything);
    expect(text.startsWith('#JSGF V1.0;\n')).toBe(true);
    expect(text.match(/public/g)).toHaveLength(1);
    expect(text).not.toMatch(/[{}]|import/);
    expect(text.replace('#JSGF V1.0', '').replaceAll('<NULL>', '')).not.toMatch(/[A-Z]/);
  });

  test('defines every rule it uses, since the recogniser would drop an undefined one silently', () => {
    const text = toJsgf(everything);
    const rules = rulesOf(text);
    const used = [...text.matchAll(/<([^>]+)>/g)].map(([, name]) => name ?? '');
    expect(used.filter((name) => name !== 'NULL' && !rules.has(name))).toEqual([]);
  });

  test('absorbs other speech with a weighted phone loop and decoys', () => {
    const text = toJsgf(few, { filler: { weight: 1e-15, phones: ['ph_aa', 'ph_ae'] }, decoys: ['Okay!', 'all right'] });
    expect(rulesOf(text).get('utterance')).toEqual({
      kind: 'oneOf',
      weights: [1, 1, 1e-15],
      parts: [
        { kind: 'rule', name: 'command' },
        { kind: 'rule', name: 'decoy' },
        {
          kind: 'repeat',
          least: 1,
          part: { kind: 'oneOf', parts: ['ph_aa', 'ph_ae'].map((phone): Phrase => ({ kind: 'word', text: phone })) },
        },
      ],
    });
    const graph = graphOf(text);
    for (const words of ['okay', 'all right', 'ph_ae ph_aa ph_aa', 'bolt two done'])
      expect([words, accepts(graph, words)]).toEqual([words, true]);
  });

  test('an empty grammar can be armed and hears nothing', () => {
    const none = wellFormed(liveGrammar(english, [], 'none'));
    expect(rulesOf(toJsgf(none)).get('utterance')).toEqual({ kind: 'void' });
  });
});

describe('the word graph', () => {
  test('holds the sentences of the live grammar', () => {
    const graph = wordGraph(everything);
    expect(samples(everything, 500).filter(({ words }) => !accepts(graph, words))).toEqual([]);
    expect(accepts(graph, 'bolt seven')).toBe(false);
    expect(accepts(graph, 'bolt forty done')).toBe(false);
  });

  test('lists no word twice where sentences go on alike', () => {
    const done = wellFormed(liveGrammar(english, [offerOf('bolt-done')], 'r'));
    // start, bolt, after one (ten may follow), after any other number, after is, end;
    // for the other order: after done, after with, after bolt, after one.
    expect(wordGraph(done).states).toHaveLength(10);
  });
});

describe('the phrase list for a bigram recogniser', () => {
  const list = toPhraseList(everything);

  test('holds whole sentences only, and the mark for other words', () => {
    const graph = wordGraph(everything);
    expect(list.at(-1)).toBe('[unk]');
    expect(list.slice(0, -1).filter((phrase) => !accepts(graph, phrase))).toEqual([]);
    expect(new Set(list).size).toBe(list.length);
  });

  test('holds every word that can be said, and is no longer than the graph', () => {
    const graph = wordGraph(everything);
    const words = new Set(graph.states.flatMap(({ next }) => [...next.keys()]));
    expect([...words].filter((word) => !list.some((phrase) => phrase.split(' ').includes(word)))).toEqual([]);
    expect(list.length).toBeLessThanOrEqual(graph.states.reduce((sum, { next }) => sum + next.size, 1));
  });
});
