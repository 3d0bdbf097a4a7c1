import { describe, expect, test } from 'vitest';
import { toPhraseList } from '../../src/core/language/to-phrases';
import { missingWords, phrasesFor } from '../../src/speech/vosk/vocabulary';
import { everything } from '../grammars/en/english';
import { AT_BOLTS, AT_STEP } from './tone-grammar';
import { OTHER, TONE_WORDS } from './tone-words';

const wordsIn = (phrases: readonly string[]): ReadonlySet<string> => new Set(phrases.flatMap((p) => p.split(' ')));
const TONES = new Set([...TONE_WORDS, OTHER]);

describe('the phrases for a model', () => {
  test('are all of the grammar where it knows every word', () => {
    const all = toPhraseList(everything);
    expect(phrasesFor(everything, wordsIn(all))).toEqual({ revision: 'everything', phrases: all, missing: [] });
  });

  test('hold only words it knows, and no phrase with one left out of it', () => {
    const { phrases, missing } = phrasesFor(AT_BOLTS, TONES);
    expect(phrases).toContain('bolt seven done');
    expect(phrases).not.toContain('bolt done');
    for (const word of wordsIn(phrases)) expect(TONES).toContain(word);
    expect(missing).toEqual(expect.arrayContaining(['four', 'is', 'three', 'with']));
  });

  test('name as missing only words that can be said now', () => {
    expect(phrasesFor(AT_STEP, TONES).missing).not.toContain('four');
  });

  test('take in other speech where the model has a word for it, and do without where it has none', () => {
    expect(phrasesFor(AT_STEP, TONES).phrases).toContain(OTHER);
    expect(phrasesFor(AT_STEP, new Set(TONE_WORDS)).phrases).not.toContain(OTHER);
  });
});

test('missing words are listed once each, in order', () => {
  expect(missingWords(['stop', 'zebra', 'fife', 'zebra'], TONES)).toEqual(['fife', 'zebra']);
});
