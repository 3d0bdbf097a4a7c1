import { describe, expect, test } from 'vitest';
import { phrase, phraseAll } from '../../../src/core/phrasing/phrase';
import {
  count,
  duration,
  list,
  quantity,
  type ReplyCode,
  reason,
  replies,
  reply,
  type Said,
  text,
} from '../../../src/core/phrasing/reply';
import { wordsOf } from '../../../src/core/phrasing/speaking-time';
import { englishBook } from './english';
import { sampleOf } from './sample-slots';

const book = englishBook();
const spoken = (code: ReplyCode, slots?: Record<string, Said>) => phrase(book, sampleOf(code, slots)).spoken;
const shown = (code: ReplyCode, slots?: Record<string, Said>) => phrase(book, sampleOf(code, slots)).shown;

describe('echoes are short enough for a hundred of them', () => {
  test.each<[ReplyCode, number]>([
    ['next-number', 1],
    ['step-done', 1],
    ['bolt-done', 2],
    ['next-where', 4],
    ['marked-taken', 2],
    ['bolt-then-next', 6],
    ['setting-taken', 5],
    ['end-closed', 8],
    ['angle-so-far', 8],
    ['reading-taken', 8],
    ['timer-running', 8],
    ['bolts-done', 8],
    ['stopped', 5],
    ['say-again', 2],
  ])('%s is at most %d words', (code, most) => {
    expect(wordsOf(spoken(code))).toBeLessThanOrEqual(most);
  });
});

describe('in our own words', () => {
  test.each<[ReplyCode, Record<string, Said>, string, string]>([
    ['bolt-then-next', {}, 'Seven done. Eight, rear, exhaust side.', '7 done. 8, rear, exhaust side.'],
    ['next-bolt', {}, 'Bolt seven, rear, exhaust side. Forty newton meters.', 'Bolt 7, rear, exhaust side. 40 N·m.'],
    ['next-bolt', { where: text('') }, 'Bolt seven. Forty newton meters.', 'Bolt 7. 40 N·m.'],
    ['bolts-done', {}, 'Bolts one through ten done.', 'Bolts 1 to 10 done.'],
    [
      'remaining-bolts',
      { left: count(1), passes: count(0) },
      'One bolt to go, then no more passes.',
      '1 bolt to go, then no more passes.',
    ],
    [
      'end-closed',
      { left: count(0) },
      'The pressure cap, closed. No more open.',
      'The pressure cap, closed. No more open.',
    ],
    [
      'setting-wrong',
      {},
      'Not three zero. Set forty newton meters and say it again.',
      'Not 30. Set 40 N·m and say it again.',
    ],
    ['warning', { text: text('Hot! Stand back') }, 'Warning. Hot! Stand back.', 'Warning: Hot! Stand back.'],
    [
      'read-back-first',
      {},
      'Say it back first. Which face is up, and which end does its mark point to?',
      'Say it back first. Which face is up, and which end does its mark point to?',
    ],
    [
      'loose-ends',
      {},
      'Still open, the pressure cap and a dropped part.',
      'Still open, the pressure cap and a dropped part.',
    ],
    [
      'whole-pass',
      {},
      'First pass. Forty newton meters. Bolts one through ten, in that order.',
      'First pass. 40 N·m. Bolts 1 to 10, in that order.',
    ],
    ['taken-back', {}, 'Taken back. Bolt seven done, first pass.', 'Taken back. Bolt 7 done, first pass.'],
    [
      'in-unit',
      { value: quantity({ value: 29.502485, unit: 'lbf·ft' }) },
      'About twenty nine point five foot pounds.',
      'About 29.5 lbf·ft.',
    ],
    ['tool-is', { tool: list(['hoist', 'drain pan']) }, 'Hoist and drain pan.', 'Hoist and drain pan.'],
    [
      'timer-runs',
      { left: duration(9_000_000) },
      'Not yet. Sealant skin, two hours thirty minutes left.',
      'Not yet. Sealant skin, 2 h 30 min left.',
    ],
    [
      'did-sign-off',
      {},
      'Signed off the pressure cap, waiting for a part.',
      'Signed off the pressure cap, waiting for a part.',
    ],
    [
      'did-sign-off',
      { reason: reason('old-one') },
      'Signed off the pressure cap, old one.',
      'Signed off the pressure cap, old-one.',
    ],
    ['did-reject', { words: text('') }, 'Not taken.', 'Not taken.'],
    ['shown-value', {}, 'forty newton meters', '40 N·m'],
  ])('%s %j', (code, slots, says, shows) => {
    expect(phrase(book, sampleOf(code, slots))).toEqual({ spoken: says, shown: shows });
  });

  test('several replies follow each other as sentences, and names as a list', () => {
    const both = [reply('pass-complete', { pass: text('first pass') }), reply('mark-heads', {})];
    expect(phraseAll(book, both).shown).toBe(
      'First pass complete. Mark every head against the casting. Then say “all marked”.',
    );
    expect(phraseAll(book, [reply('end-dropped', {}), reply('end-named', { what: text('top hose') })]).spoken).toBe(
      'a dropped part and top hose',
    );
    expect(phraseAll(book, [])).toEqual({ spoken: '', shown: '' });
  });

  test('a whole line of the log can stand in another', () => {
    const items = replies([sampleOf('did-bolt'), sampleOf('did-turn', { bolt: count(9) })]);
    expect(spoken('last-done', { items })).toBe(
      'Last done. Bolt seven done, first pass. Bolt nine turned to ninety degrees.',
    );
  });
});

describe('safety', () => {
  test('stop says that the engine is not what stopped', () => {
    expect(shown('stopped')).toMatch(/talking.*not the engine/i);
  });

  test('demonstration data says whose figures come first', () => {
    expect(shown('demonstration')).toMatch(/demonstration data.*maker’s own figures.*first/i);
  });

  test.each<ReplyCode>([
    'fault-held',
    'replaced-held',
    'order-to-settle',
    'bolt-held',
    'bolt-is-held',
    'lubrication-unknown',
  ])('%s, where no rule is stored, sends to the manual', (code) => {
    expect(shown(code)).toMatch(/check the manual/i);
  });

  test('a doubtful bolt is asked about without telling the answer', () => {
    expect(shown('where-is-mark')).not.toMatch(/o’clock/);
  });
});
