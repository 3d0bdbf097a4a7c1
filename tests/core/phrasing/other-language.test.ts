import { describe, expect, test } from 'vitest';
import { formFor, numberWords } from '../../../src/core/phrasing/number-words';
import { phrase } from '../../../src/core/phrasing/phrase';
import { count, quantity, reply } from '../../../src/core/phrasing/reply';
import { checkReplies } from '../../../src/core/phrasing/reply-book';
import { englishData } from './english';

const UNITS = 'zéro un deux trois quatre cinq six sept huit neuf dix onze douze treize quatorze quinze seize';
const TENS = ['vingt', 'trente', 'quarante', 'cinquante', 'soixante'];

/** Zero to ninety-nine as in France, where the tables of English would not do. */
function frenchBelowHundred(): string[] {
  const small = [...UNITS.split(' '), 'dix sept', 'dix huit', 'dix neuf'];
  const tens = TENS.flatMap((ten) =>
    small.slice(0, 10).map((unit, n) => (n === 0 ? ten : n === 1 ? `${ten} et un` : `${ten} ${unit}`)),
  );
  const seventies = small.slice(10).map((unit, n) => (n === 1 ? 'soixante et onze' : `soixante ${unit}`));
  const rest = small.map((unit, n) => (n === 0 ? 'quatre vingts' : `quatre vingt ${unit}`));
  return [...small, ...tens, ...seventies, ...rest];
}

function french() {
  const data = englishData();
  data.numbers = {
    'below-hundred': frenchBelowHundred(),
    scales: [
      { worth: 1000, one: 'mille', many: '{n} mille', joint: ' ' },
      { worth: 100, one: 'cent', many: '{n} cent', joint: ' ' },
    ],
    digits: UNITS.split(' ').slice(0, 10),
    point: 'virgule',
    minus: 'moins',
    'point-sign': ',',
    'thousands-sign': '.',
    singular: 'below-two',
  };
  data.units = { ...data.units, mm: { one: 'millimètre', many: 'millimètres' } };
  data.replies = {
    ...data.replies,
    'torque-is': '{value}.',
    'remaining-bolts': { say: 'Encore {left vis|vis}.', unused: ['passes'] },
  };
  const book = checkReplies(data);
  if (!book.ok) throw new Error(JSON.stringify(book.error));
  return book.value;
}

describe('another language is another file, with no change of code', () => {
  const book = french();
  const { numbers, units } = book.words;

  test.each([
    ['16', 'seize'],
    ['21', 'vingt et un'],
    ['71', 'soixante et onze'],
    ['80', 'quatre vingts'],
    ['99', 'quatre vingt dix neuf'],
    ['100', 'cent'],
    ['165', 'cent soixante cinq'],
    ['1000', 'mille'],
    ['1999', 'mille neuf cent quatre vingt dix neuf'],
    ['0.05', 'zéro virgule zéro cinq'],
  ])('%s is %j (French as taught, hyphens left out)', (figures, said) => {
    expect(numberWords(figures, numbers)).toBe(said);
  });

  test('French keeps the singular below two', () => {
    expect(formFor('1.5', units.mm, numbers)).toBe('millimètre');
    expect(formFor('2', units.mm, numbers)).toBe('millimètres');
  });

  test('a reply takes its words and its decimal comma', () => {
    expect(phrase(book, reply('torque-is', { value: quantity({ value: 0.5, unit: 'mm' }) }))).toEqual({
      spoken: 'Zéro virgule cinq millimètre.',
      shown: '0,5 mm.',
    });
    expect(phrase(book, reply('remaining-bolts', { left: count(2), passes: count(1) })).spoken).toBe(
      'Encore deux vis.',
    );
  });
});
