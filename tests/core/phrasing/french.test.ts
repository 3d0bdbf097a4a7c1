import { describe, expect, test } from 'vitest';
import { readTongue } from '../../../src/cli/tongue-files';
import { percent } from '../../../src/core/fastening/quantity';
import { phrase, phraseAll } from '../../../src/core/phrasing/phrase';
import { clock, count, duration, quantity, reply, text } from '../../../src/core/phrasing/reply';
import { speakable } from '../../../src/core/phrasing/speakable';
import { clockPhrase } from '../../../src/core/phrasing/time-words';
import { ESTIMATES } from '../../../src/core/sums/estimates';
import { compressionSum } from '../../../src/core/sums/pressures';

const { replies } = readTongue('fr');
const said = (words: string) => speakable(words, replies.words);

describe('French document text as it is said (common practice)', () => {
  test.each([
    ['Serrer à 40 N·m (29,5 lbf·ft).', 'Serrer à quarante newtons mètres, vingt neuf virgule cinq livres pieds.'],
    ['0,05 mm', 'zéro virgule zéro cinq millimètre'],
    ['1,5 mm', 'un virgule cinq millimètre'],
    ['2 mm', 'deux millimètres'],
    ['12\u00a0500 km', 'douze mille cinq cent kilomètres'],
    ['71, 80, 91 et 200', 'soixante et onze, quatre vingts, quatre vingt onze et deux cent'],
    ['85–95°', 'quatre vingt cinq à quatre vingt quinze degrés'],
    ['15 mètres de tuyau, 3 étapes', 'quinze mètres de tuyau, trois étapes'],
    ['boulon n° 2, cyl. 3', 'boulon numéro deux, cylindre trois'],
    ['le 2e passage, la 1re passe', 'le deuxième passage, la première passe'],
    ['24 h à 20 °C', 'vingt quatre heures à vingt degrés Celsius'],
    ['un carré de 1/2 in', 'un carré de un demi pouce'],
    ['M10x1,5', 'M dix par un virgule cinq'],
    ['Où est le coin coupé ?', 'Où est le coin coupé?'],
    ["l’étau, l'avant", "l'étau, l'avant"],
    ['« prêt »', 'prêt'],
  ])('%j', (printed, spoken) => {
    expect(said(printed)).toBe(spoken);
  });
});

test.each([
  [1, '1 heure'],
  [1.5, '1 heure et demie'],
  [2, '2 heures'],
  [12.5, '12 heures et demie'],
])('a mark at %d is shown as %j', (hours, shown) => {
  expect(clockPhrase(hours, replies.words).shown).toBe(shown);
});

describe('French replies', () => {
  const timer = { timer: text('mastic') };
  test.each([
    [reply('timer-running', { ...timer, left: duration(60_000) }), 'Mastic, encore une minute.'],
    [reply('timer-running', { ...timer, left: duration(21 * 60_000) }), 'Mastic, encore vingt et une minutes.'],
    [reply('timer-running', { ...timer, left: duration(3_660_000) }), 'Mastic, encore une heure une minute.'],
    [reply('remaining-bolts', { left: count(1), passes: count(0) }), 'Encore un boulon. Passes ensuite, zéro.'],
    [reply('remaining-bolts', { left: count(0), passes: count(2) }), 'Encore zéro boulon. Passes ensuite, deux.'],
    [
      reply('mark-proves-done', { clock: clock(1), bolt: count(2) }),
      'Repère à une heure. Le boulon deux est prouvé fait.',
    ],
    [reply('torque-is', { value: quantity({ value: 80, unit: 'N·m' }) }), 'Quatre vingts newtons mètres.'],
  ])('%#', (given, spoken) => {
    expect(phrase(replies, given).spoken).toBe(spoken);
  });

  test('are set as French is: a space that does not break before : ; ! ? and inside « »', () => {
    const shown = [...Object.values(replies.replies)].flatMap(({ say, show }) => JSON.stringify([say, show]));
    expect(
      shown.filter((words) => /[^\u00a0\s"] ?[?!;»]|« ?[^\u00a0]/.test(words.replaceAll('\\u00a0', '\u00a0'))),
    ).toEqual([]);
    expect(phrase(replies, reply('closing-ready', {}))).toEqual({
      spoken: "Les étapes sont terminées et rien n'est ouvert. Pour finir, dire clôture le travail.",
      shown: 'Les étapes sont terminées et rien n’est ouvert. Pour finir, dire «\u00a0clôture le travail\u00a0».',
    });
  });
});

test('a sum is told in French, its formula, its figures and its sources too', () => {
  const rule = { id: 'r', say: 'trois quarts', whose: 'le constructeur', figures: [] };
  const judge = { kind: 'share-of-highest', name: rule.say, source: rule.whose, percent: percent(75) } as const;
  const sum = compressionSum(rule, judge, []);
  const readings = [1200, 900].map((value, i) => ({
    id: `c${i}`,
    say: `cylindre ${i + 1}`,
    value,
    unit: 'kPa' as const,
  }));
  const { shown } = phraseAll(
    replies,
    sum.workOut(readings, () => []),
  );
  expect(shown).toContain(
    'part = 100 · plus faible / plus forte avec plus faible 900 kPa, plus forte 1200 kPa. Source\u00a0: usage courant.',
  );
});

test('a strength is named in French, aloud and on the screen', () => {
  const told = phraseAll(replies, ESTIMATES.proof({ thread: 'M10', grade: 'class 10.9' }));
  expect(told.shown).toContain('M10 classe 10.9');
  expect(told.spoken).toContain('classe dix virgule neuf');
  expect(told.shown).not.toMatch(/\{|\bclass\b/);
});
