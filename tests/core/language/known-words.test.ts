import { expect, test } from 'vitest';
import { interpret } from '../../../src/core/language/interpret';
import { withKnownWords } from '../../../src/core/language/known-words';
import { liveGrammar } from '../../../src/core/language/live-grammar';
import { toJsgf } from '../../../src/core/language/lower-jsgf';
import { liveVocabulary } from '../../../src/core/language/vocabulary';
import { english, offerOf, oneOfThese, wellFormed } from '../../grammars/en/english';

const offers = [offerOf('stop'), offerOf('end-closed', { end: oneOfThese('coolant hose', 'zyzzy valve') })];
const live = wellFormed(liveGrammar(english, offers, 'r'));

test('a word nobody can pronounce takes its own sentences with it and no others', () => {
  const heard = withKnownWords(live, (word) => word !== 'zyzzy');
  expect(heard.unknown).toEqual(['zyzzy']);
  expect(liveVocabulary(heard.live)).not.toContain('zyzzy');
  expect(toJsgf(heard.live)).not.toContain('zyzzy');
  for (const words of ['stop', 'coolant hose is back on'])
    expect(interpret(heard.live, words)).toEqual(interpret(live, words));
  expect(interpret(heard.live, 'zyzzy valve is back on').kind).toBe('nothing');
});

test('a command without any sentence left is left out', () => {
  const heard = withKnownWords(live, (word) => !['coolant', 'zyzzy'].includes(word));
  expect(heard.live.commands.map(({ rule }) => rule)).toEqual(['stop']);
});

test('with every word known the grammar is the same', () => {
  expect(withKnownWords(live, () => true)).toEqual({ live, unknown: [] });
});
