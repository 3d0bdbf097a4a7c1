import { describe, expect, test } from 'vitest';
import { interpret } from '../../../src/core/language/interpret';
import { liveGrammar } from '../../../src/core/language/live-grammar';
import { ruleBook } from '../../../src/core/language/rule-book';
import { samples } from '../../../src/core/language/sample';
import { readingOf, wellFormed } from '../../grammars/en/english';

/** French counts by twenties from sixty on, which no table of tens and ones can say. The code must not notice. */
const french = wellFormed(
  ruleBook([
    {
      file: 'commands.jsgf',
      text: `#JSGF V1.0 UTF-8 fr;
        grammar fr.commandes;
        import <fr.nombres.*>;
        public <bolt-done> = vis <bolt> serrée;
        public <set-at> = réglée à <setting>;`,
    },
    {
      file: 'numbers.jsgf',
      text: `#JSGF V1.0 UTF-8 fr;
        grammar fr.nombres;
        public <number> = (<entier> [<point> <digit>+]) {join};
        public <point> = virgule {.};
        public <digit> = zéro {0} | <un-à-neuf>;
        <un-à-neuf> = un {1} | deux {2} | trois {3} | quatre {4} | cinq {5} | six {6} | sept {7} | huit {8} | neuf {9};
        <dix-à-dix-neuf> = dix {10} | onze {11} | douze {12} | treize {13} | quatorze {14} | quinze {15} | seize {16}
                         | (dix {10} (sept {7} | huit {8} | neuf {9})) {sum};
        <un-à-dix-neuf> = <un-à-neuf> | <dix-à-dix-neuf>;
        <dizaine> = vingt {20} | trente {30} | quarante {40} | cinquante {50};
        <moins-de-cent> = <un-à-dix-neuf> | <dizaine> [[et] <un-à-neuf>] | soixante {60} [[et] <un-à-dix-neuf>]
                        | (quatre vingts) {80} | (quatre vingt) {80} <un-à-dix-neuf>;
        <centaine> = cent {100} | (<un-à-neuf> (cent | cents)) {*100};
        <entier> = zéro {0} | <moins-de-cent> | <centaine> [<moins-de-cent>] | (<un-à-neuf> <digit>+) {join};
        public <unit> = (newton mètres) {=N·m};`,
    },
  ]),
);

const set = wellFormed(
  liveGrammar(french, [{ rule: 'set-at', manner: 'progress', slots: { setting: readingOf(0, 999, 2, ['N·m']) } }], 'r'),
);

describe('a language is its grammar files alone', () => {
  test.each<readonly [words: string, value: number, source: string]>([
    ['soixante et onze', 71, 'French counting, common practice'],
    ['soixante-dix-sept', 77, 'French counting, common practice'],
    ['quatre-vingts', 80, 'French counting, common practice'],
    ['quatre-vingt-un', 81, 'French counting, common practice'],
    ['quatre-vingt-dix-neuf', 99, 'French counting, common practice'],
    ['deux cent trois', 203, 'French counting, common practice'],
    ['neuf cent quatre-vingt-dix', 990, 'French counting, common practice'],
    ['quarante-cinq virgule deux', 45.2, 'the decimal sign is a comma, common practice'],
    ['45,2', 45.2, 'typed'],
  ])('%s is %d', (words, value) => {
    expect(interpret(set, `réglée à ${words} newton mètres`)).toMatchObject({
      kind: 'command',
      slots: { setting: { value, unit: 'N·m' } },
    });
  });

  test('bolts are held to the pattern', () => {
    const slots = { bolt: { kind: 'integers' as const, values: [7, 71, 97] } };
    const live = wellFormed(liveGrammar(french, [{ rule: 'bolt-done', manner: 'progress', slots }], 'r'));
    expect(
      samples(live, 50)
        .map(({ words }) => words)
        .sort(),
    ).toEqual([
      'vis neuf sept serrée',
      'vis quatre vingt dix sept serrée',
      'vis sept serrée',
      'vis sept un serrée',
      'vis soixante et onze serrée',
      'vis soixante onze serrée',
    ]);
    expect(interpret(live, 'vis quatre-vingt-un serrée')).toEqual({
      kind: 'almost',
      rule: 'bolt-done',
      slot: 'bolt',
      given: '81',
    });
  });
});
