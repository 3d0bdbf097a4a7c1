import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { interpret } from '../../../src/core/language/interpret';
import { liveGrammar } from '../../../src/core/language/live-grammar';
import { ruleBook } from '../../../src/core/language/rule-book';
import { figureText } from '../../../src/core/phrasing/figure-text';
import { cardinal, digitByDigit, numberWords, printedNumberWords } from '../../../src/core/phrasing/number-words';
import { englishBook } from './english';

const { numbers, fractions } = englishBook().words;

describe('whole numbers', () => {
  test.each([
    [0, 'zero', 'common English'],
    [14, 'fourteen', 'common English'],
    [40, 'forty', 'common English'],
    [99, 'ninety nine', 'common English'],
    [100, 'one hundred', 'common English'],
    [165, 'one hundred and sixty five', 'common English'],
    [500, 'five hundred', 'FAA AIM 4-2-8'],
    [1005, 'one thousand and five', 'common English'],
    [4500, 'four thousand five hundred', 'FAA AIM 4-2-8'],
    [13_500, 'thirteen thousand five hundred', 'common English; radio says one three thousand'],
    [1_000_000, 'one million', 'common English'],
    [2_000_030, 'two million and thirty', 'common English'],
    [1_000_000_000, 'one zero zero zero zero zero zero zero zero zero', 'beyond the largest scale'],
  ])('%d is %j (%s)', (n, said) => {
    expect(cardinal(n, numbers)).toBe(said);
  });
});

describe('digit by digit', () => {
  test.each([
    ['10', 'one zero', 'FAA AIM 4-2-8'],
    ['122.1', 'one two two point one', 'FAA AIM 4-2-8'],
    ['50', 'five zero', 'FAA AIM 4-2-8: each digit, so that fifty is not taken for fifteen'],
    ['15', 'one five', 'FAA AIM 4-2-8'],
    ['0.05', 'zero point zero five', 'SI Brochure 5.4.4: a zero before the decimal sign'],
    ['-4', 'minus four', 'common English'],
  ])('%s is %j (%s)', (figures, said) => {
    expect(digitByDigit(figures, numbers)).toBe(said);
  });

  test('a zero is never "oh"', () => {
    expect(digitByDigit('1005', numbers)).toBe('one zero zero five');
  });
});

describe('numbers as manuals print them (common practice)', () => {
  test.each([
    ['0.05', 'zero point zero five'],
    ['0,05', 'zero point zero five'],
    ['.5', 'zero point five'],
    ['12.50', 'twelve point five zero'],
    ['12,500', 'twelve thousand five hundred'],
    ['12\u202f500', 'twelve thousand five hundred'],
    ['1,234.5', 'one thousand two hundred and thirty four point five'],
    ['-37', 'minus thirty seven'],
    ['\u221237', 'minus thirty seven'],
    ['3/8', 'three eighths'],
    ['1/2', 'one half'],
    ['1 1/2', 'one and one half'],
    ['1-1/2', 'one and one half'],
    ['9/16', 'nine sixteenths'],
    ['2/7', 'two over seven'],
    ['007', 'zero zero seven'],
    ['4711081542', 'four seven one one zero eight one five four two'],
  ])('%s is %j', (printed, said) => {
    expect(printedNumberWords(printed, numbers, fractions)).toBe(said);
  });
});

describe('figures', () => {
  test.each([
    [40, '40', 'as it is'],
    [0.1 + 0.2, '0.3', 'without the dust of binary fractions'],
    [0.4725, '0.4725', 'a reading keeps every digit it was given'],
    [165.25, '165.25', 'a reading keeps every digit it was given'],
    [29.502485, '29.5', 'a computed value keeps three significant digits: 40 N·m is 29.50 lbf·ft (NIST SP 811)'],
    [128.79270509, '129', 'a computed value keeps three significant digits: 95 lbf·ft (NIST SP 811)'],
    [1733.49862, '1733', 'and never less than its whole part: 170 N·m in kgf·cm'],
    [0.0019685, '0.00197', 'a computed value keeps three significant digits: 0.05 mm in inches'],
    [-0, '0', 'nobody hears "minus zero"'],
    [1e-7, '0.0000001', 'no exponent is ever said'],
  ])('%d is %s: %s', (value, figures) => {
    expect(figureText(value)).toBe(figures);
  });
});

const grammar = ruleBook(
  ['commands.jsgf', 'numbers.jsgf'].map((file) => ({
    file,
    text: readFileSync(new URL(`../../../grammars/en/${file}`, import.meta.url), 'utf8'),
  })),
);
if (!grammar.ok) throw new Error(JSON.stringify(grammar.error));
const ear = liveGrammar(
  grammar.value,
  [
    {
      rule: 'set-at',
      manner: 'progress',
      slots: { setting: { kind: 'reading', least: 0, most: 9999, decimals: 2, units: [], unitNeeded: false } },
    },
  ],
  'test',
);
if (!ear.ok) throw new Error(JSON.stringify(ear.error));

describe('what is said can be said back', () => {
  const heard = (said: string) => interpret(ear.value, `set at ${said}`);
  const meaning = (value: number) => ({ kind: 'command', slots: { setting: { kind: 'reading', value } } });

  test('every number up to two decimals, in full and digit by digit', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99_999 }), fc.constantFrom(1, 10, 100), (n, tenth) => {
        const value = n / tenth;
        fc.pre(value <= 9999);
        const figures = figureText(value);
        expect(heard(numberWords(figures, numbers))).toMatchObject(meaning(value));
        expect(heard(digitByDigit(figures, numbers))).toMatchObject(meaning(value));
      }),
      { numRuns: 60 },
    );
  });
});
