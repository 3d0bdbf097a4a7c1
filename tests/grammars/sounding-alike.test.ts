import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { confusionFinder } from '../../src/core/language/sounds/confusability';
import { bookVocabulary, liveVocabulary, unpronounceable } from '../../src/core/language/vocabulary';
import { plainWords } from '../../src/core/language/words';
import { everyLanguage } from './language';

const folder = `${import.meta.dirname}/../../procedures`;
const documents = readdirSync(folder)
  .filter((file) => file.endsWith('.yaml'))
  .map((file) => readFileSync(`${folder}/${file}`, 'utf8'));

describe.each(await everyLanguage())('$code', ({ tongue, book, sounds, everything, lexicons, samples }) => {
  test('every word of the grammar files and of everything live has a pronunciation', () => {
    expect(unpronounceable([...bookVocabulary(book), ...liveVocabulary(everything)], lexicons)).toEqual([]);
  });

  test('no line of the lexicon is for a word that is in no grammar and no shipped procedure', () => {
    const spoken = new Set([...bookVocabulary(book), ...documents.flatMap(plainWords)]);
    expect([...tongue.lexicon.keys()].filter((word) => !spoken.has(word))).toEqual([]);
  });

  test('a word that nobody can pronounce is named', () => {
    expect(unpronounceable([samples.lone[0] ?? '', 'zzyx'], lexicons)).toEqual(['zzyx']);
  });

  describe('no two commands sound alike, with all live at once', () => {
    const confusions = confusionFinder(lexicons, sounds)(everything);

    test('whatever is mistaken for another command, nothing is changed by it', () => {
      const between = confusions.filter(({ slot, stakes }) => slot === undefined && stakes === 'acts');
      expect(between).toEqual([]);
    });

    test('the bolts that sound alike are known', () => {
      const bolts = confusions.filter(({ a, slot }) => a.rule === 'bolt-done' && slot === 'bolt');
      expect(bolts.map(({ a, b }) => `${a.words} / ${b.words}`).sort()).toEqual(samples.alike);
    });
  });
});
