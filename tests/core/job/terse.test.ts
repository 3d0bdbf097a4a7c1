import { expect, test } from 'vitest';
import { phraseAll } from '../../../src/core/phrasing/phrase';
import { englishBook } from '../phrasing/english';
import { atFirstPass, bolt, setAt, type Workbench } from './workbench';

const spoken = (w: Workbench, c: Parameters<Workbench['give']>[0]): string =>
  phraseAll(englishBook(), w.give(c).replies).spoken;

// "Just the number": a person who has done a hundred of them wants no more.
test('numbers only is numbers only, for settings, bolts and what comes next', () => {
  const w = atFirstPass();
  expect(spoken(w, 'terse')).toBe('Numbers only.');
  expect(spoken(w, 'tell-next')).toBe('Set thirty newton meters.');
  expect(spoken(w, setAt(30))).toBe('Set at thirty newton meters. Bolt one. Thirty newton meters.');
  expect(spoken(w, bolt(1))).toBe('Two.');
  expect(spoken(w, 'tell-next')).toBe('Bolt two. Thirty newton meters.');
});

test('it holds over a break and the night, until it is said in full', () => {
  const w = atFirstPass();
  w.all('terse', setAt(30), bolt(1), 'hold-on');
  w.reopen(12 * 3_600_000);
  w.give('im-back');
  expect(spoken(w, bolt(2))).toBe('Three.');
  w.give('full');
  expect(spoken(w, bolt(3))).toMatch(/^Three done\. Four, .+\.$/);
});

test('faults, refusals and hazards are told in full all the same', () => {
  const w = atFirstPass();
  w.all('terse', setAt(30));
  expect(spoken(w, 'clicked-early')).toMatch(/^Bolt one/);
  expect(spoken(w, 'tell-caution')).toContain('Only cold');
});
