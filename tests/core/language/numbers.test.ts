import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { SlotDomain } from '../../../src/core/language/grammar';
import { interpret } from '../../../src/core/language/interpret';
import { liveGrammar } from '../../../src/core/language/live-grammar';
import { samples } from '../../../src/core/language/sample';
import { english, readingOf, upTo, wellFormed } from '../../grammars/en/english';

const live = (reading: SlotDomain) =>
  wellFormed(liveGrammar(english, [{ rule: 'measured', manner: 'progress', slots: { reading } }], 'r'));

const anyNumber = live(readingOf(0, 99_999, 3));

/** What the words come to as a reading, or undefined where they are no number. */
function numberOf(words: string): number | undefined {
  const meaning = interpret(anyNumber, `reading ${words}`);
  const reading = meaning.kind === 'command' ? meaning.slots.reading : undefined;
  return reading?.kind === 'reading' ? reading.value : undefined;
}

describe('numbers said as in the radio-telephony handbooks', () => {
  const aim = 'FAA Aeronautical Information Manual 4-2-8';
  test.each<readonly [words: string, value: number, source: string]>([
    ['five hundred', 500, aim],
    ['four thousand five hundred', 4500, aim],
    ['one zero thousand', 10_000, aim],
    ['one three thousand five hundred', 13_500, aim],
    ['one zero', 10, aim],
    ['one two two point one', 122.1, aim],
    ['one two two decimal one', 122.1, 'ICAO word for the point'],
    ['tree', 3, 'FAA AIM 4-2-7: TREE for 3'],
    ['fife', 5, 'FAA AIM 4-2-7: FIFE for 5'],
    ['niner', 9, 'FAA AIM 4-2-7: NIN-ER for 9'],
    ['one niner tree', 193, 'FAA AIM 4-2-7 digits said one by one'],
  ])('%s is %d', (words, value) => {
    expect(numberOf(words)).toBe(value);
  });
});

describe('numbers as they are said at a bench', () => {
  test.each<readonly [words: string, value: number, source: string]>([
    ['forty', 40, 'common practice'],
    ['fourteen', 14, 'common practice'],
    ['one hundred sixty five', 165, 'common practice'],
    ['one hundred and sixty five', 165, 'common practice'],
    ['a hundred', 100, 'common practice'],
    ['one sixty five', 165, 'common practice'],
    ['one six five', 165, 'common practice'],
    ['one six oh', 160, 'common practice'],
    ['one oh five', 105, 'common practice'],
    ['nine hundred ninety nine', 999, 'the top of the cardinals asked for'],
    ['zero', 0, 'the bottom of them'],
    ['point four seven', 0.47, 'a spark plug gap in millimetres, common practice'],
    ['zero point four seven', 0.47, 'ISO 80000-1: a zero before the sign, from memory'],
    ['point oh oh two', 0.002, 'two thousandths of an inch, common practice'],
    ['seventy point zero three', 70.03, 'a bore in millimetres, common practice'],
    ['forty five decimal two', 45.2, 'common practice'],
    ['two and a half', 2.5, 'common practice'],
    ['half', 0.5, 'common practice'],
    ['a quarter', 0.25, 'common practice'],
    ['three quarters', 0.75, 'common practice'],
    ['twelve and three quarters', 12.75, 'common practice'],
  ])('%s is %d', (words, value) => {
    expect(numberOf(words)).toBe(value);
  });
});

describe('sounds and scraps that are no number', () => {
  test.each<readonly [words: string, why: string]>([
    ['oh', 'a sound people make; a zero only inside a run of digits'],
    ['oh five', 'does not begin a run of digits'],
    ['one oh', 'too near to one; said one zero'],
    ['hundred', 'a multiplier with nothing to multiply'],
    ['point', 'nothing after it'],
    ['forty point', 'nothing after it'],
    ['twenty fourteen', 'two numbers'],
    ['for', 'sounds like four, is not a number word'],
    ['won', 'sounds like one, is not a number word'],
    ['to', 'sounds like two, is not a number word'],
    ['ate', 'sounds like eight, is not a number word'],
    ['five and', 'half of a mixed number'],
  ])('"%s": %s', (words) => {
    expect(numberOf(words)).toBeUndefined();
  });
});

describe('a slot takes exactly the numbers of its domain', () => {
  const whole = fc.integer({ min: 0, max: 1200 });
  test('every sentence of a set of whole numbers has a value in the set, and every value can be said', () => {
    fc.assert(
      fc.property(fc.uniqueArray(whole, { minLength: 1, maxLength: 12 }), (values) => {
        const bolts = live({ kind: 'integers', values });
        const said = samples(bolts, 400).map(({ words, meaning }) => {
          expect(interpret(bolts, words)).toEqual(meaning);
          return meaning.kind === 'command' ? meaning.slots.reading : undefined;
        });
        const heard = new Set(said.map((value) => (value?.kind === 'integer' ? value.value : undefined)));
        expect([...heard].every((value) => value !== undefined && values.includes(value))).toBe(true);
        if (values.length <= 4) expect(heard.size).toBe(values.length);
      }),
      { numRuns: 40 },
    );
  });

  test('a range with decimals gives readings in the range only', () => {
    const range = fc.tuple(
      fc.integer({ min: 0, max: 9000 }),
      fc.integer({ min: 0, max: 3000 }),
      fc.integer({ min: 1, max: 2 }),
    );
    fc.assert(
      fc.property(range, ([low, width, decimals]) => {
        const scale = 10 ** decimals;
        const some = live(readingOf(low / scale, (low + width) / scale, decimals));
        for (const { words, meaning } of samples(some, 60)) expect(interpret(some, words)).toEqual(meaning);
      }),
      { numRuns: 40 },
    );
  });

  test.each<readonly [words: string, domain: SlotDomain, given: string]>([
    ['forty', upTo(10), '40'],
    ['zero', upTo(10), '0'],
    ['two hundred and one', readingOf(120, 200), '201'],
    ['one nineteen', readingOf(120, 200), '119'],
    ['one twenty point five', readingOf(120, 200), '120.5'],
    ['forty five', readingOf(1, 100, 0, ['N·m'], true), '45'],
    ['forty five pounds', readingOf(1, 100, 0, ['N·m', 'lbf·ft']), '45 lbf'],
  ])('"%s" has the shape but is outside: given %s %s', (words, domain, given) => {
    expect(interpret(live(domain), `reading ${words}`)).toEqual({
      kind: 'almost',
      rule: 'measured',
      slot: 'reading',
      given,
    });
  });

  test.each<readonly [words: string, value: number]>([
    ['one twenty', 120],
    ['two hundred', 200],
  ])('both ends belong to a range: %s', (words, value) => {
    const meaning = interpret(live(readingOf(120, 200)), `reading ${words}`);
    expect(meaning).toMatchObject({ kind: 'command', slots: { reading: { value } } });
  });
});
