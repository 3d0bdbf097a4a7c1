import { describe, expect, test } from 'vitest';
import { offersOf } from '../../../src/core/job/offers';
import { teachingOffers } from '../../../src/core/job/teaching';
import { joint } from './joint';
import { bolt, codes, setAt, soFar, Workbench } from './workbench';

const rules = (w: Workbench): readonly string[] => offersOf(w.job).map(({ rule }) => rule);
const angled = () => new Workbench(joint([{ torque: 30 }, { angle: 90 }]));

// A tightening with angles is not left half done (common practice), so nothing of it begins unanswered.
describe('before a tightening with angles', () => {
  test.each([
    ['the setting', setAt(30)],
    ['a bolt', bolt(1)],
    ['a turn', soFar(45)],
    ['a bare done', 'done' as const],
    ['a click', 'clicked' as const],
    ['the next pass', 'next-pass-ready' as const],
  ])('%s waits for an answer', (_, said) => {
    const w = angled();
    const decision = w.give(said);
    expect([decision.verdict, decision.entries, codes(decision)]).toEqual(['refused', [], ['time-first']]);
  });

  test('"i have the time" begins it, and only now is it told what to set', () => {
    const w = angled();
    expect(codes(w.give('tell-next'))).not.toContain('set-wrench');
    expect(codes(w.give('have-time'))).toEqual(['time-taken', 'pass-begins', 'set-wrench']);
    expect(w.give(setAt(30)).verdict).toBe('done');
    expect(w.give(bolt(1)).verdict).toBe('done');
  });

  test('"no time now" leaves it, and it is asked again on coming back', () => {
    const w = angled();
    expect(codes(w.give('no-time'))).toEqual(['no-time']);
    expect(codes(w.give('im-back'))).toContain('time-asked');
    expect(codes(w.give(setAt(30)))).toEqual(['time-first']);
  });

  test('it is answered once: not for the next session, and not when all was slackened', () => {
    const w = angled();
    w.give('have-time');
    w.reopen(3_600_000);
    w.give('im-back');
    expect(w.give(setAt(30)).verdict).toBe('done');
    w.all('slacken-all', 'confirm');
    expect(w.give(setAt(30)).verdict).toBe('done');
  });

  test('asking, breaking off and what was dropped are heard all the same', () => {
    expect(rules(angled())).toEqual(expect.arrayContaining(['have-time', 'no-time', 'hold-on', 'tell-torque', 'stop']));
    expect(angled().give('dropped-one').verdict).toBe('done');
    expect(angled().give('hold-on').verdict).toBe('done');
  });

  test('the answer is taught before the setting', () => {
    const taught = teachingOffers(angled().job).map(({ rule }) => rule);
    expect(taught).toContain('have-time');
    expect(taught).not.toContain('set-at');
  });
});

test('a joint of torque alone can be left at any bolt, and is not asked about', () => {
  const w = new Workbench(joint([{ torque: 30 }, { torque: 60 }]));
  expect(rules(w)).not.toContain('have-time');
  expect(w.give(setAt(30)).verdict).toBe('done');
});
