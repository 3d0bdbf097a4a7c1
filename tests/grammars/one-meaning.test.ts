import { describe, expect, test, vi } from 'vitest';
import { extendable, interpret } from '../../src/core/language/interpret';
import { liveGrammar } from '../../src/core/language/live-grammar';
import { samples } from '../../src/core/language/sample';
import { wordsNow } from '../../src/core/language/words-now';
import { everyLanguage, wellFormed } from './language';

// Two cores are shared with other test files: this takes seconds, and more than the usual limit on a busy machine.
vi.setConfig({ testTimeout: 120_000 });

const ASKING = /^(?:tell-|say-again|terse|full|slower|faster|show-(?!around))/;

describe.each(await everyLanguage())('$code, with every command live at once', (language) => {
  const { book, everything, hear, offerOf } = language;
  const all = samples(everything, 3000);

  test('each sentence means the command it was made from, and nothing else', () => {
    const astray = all.filter(
      ({ words, meaning }) => JSON.stringify(interpret(everything, words)) !== JSON.stringify(meaning),
    );
    expect(astray.map(({ words }) => [words, interpret(everything, words)])).toEqual([]);
    expect(new Set(all.map(({ meaning }) => (meaning.kind === 'command' ? meaning.rule : ''))).size).toBe(
      book.publicRules.length,
    );
  });

  test('what was begun can go on until it is said', () => {
    for (const { words } of samples(everything, 300)) {
      const said = words.split(' ');
      for (let count = 0; count < said.length; count += 1)
        expect([count, words, extendable(everything, said.slice(0, count).join(' '))]).toEqual([count, words, true]);
    }
  });

  test('no sentence that changes anything is the beginning or end of one that only asks', () => {
    const asking = all.filter(({ meaning }) => meaning.kind === 'command' && ASKING.test(meaning.rule));
    expect(asking.length).toBeGreaterThan(100);
    const cut = asking.flatMap(({ words }) => {
      const said = words.split(' ');
      const ends = said.flatMap((_, at) => (at === 0 ? [] : [said.slice(at), said.slice(0, at)]));
      return ends
        .map((part) => part.join(' '))
        .filter((part) => {
          const meaning = hear(part);
          return meaning.kind === 'command' && !ASKING.test(meaning.rule) && meaning.rule !== 'stop';
        });
    });
    expect(cut).toEqual([]);
  });

  test('only a few long words stand alone', () => {
    expect([...new Set(all.map(({ words }) => words).filter((words) => !words.includes(' ')))].sort()).toEqual(
      language.samples.lone,
    );
  });

  test('the taught sentence of each command is understood as that command', () => {
    const taught = wordsNow(everything);
    expect(taught.map(({ rule }) => rule)).toEqual(book.publicRules);
    for (const { rule, example } of taught) expect(hear(example)).toMatchObject({ kind: 'command', rule });
  });

  test('the critical pair of answers shares no word', () => {
    const offers = ['confirm', 'cancel'].map((rule) => offerOf(rule));
    const pair = wellFormed(liveGrammar(book, offers, 'pair'));
    const [confirm = [], cancel = []] = ['confirm', 'cancel'].map((rule) =>
      samples(pair, 100)
        .filter(({ meaning }) => meaning.kind === 'command' && meaning.rule === rule)
        .flatMap(({ words }) => words.split(' ')),
    );
    expect(confirm.length).toBeGreaterThan(0);
    expect(confirm.filter((word) => cancel.includes(word))).toEqual([]);
  });
});
