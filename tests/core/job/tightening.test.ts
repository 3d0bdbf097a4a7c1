import { describe, expect, test } from 'vitest';
import { fold } from '../../../src/core/job/evolve';
import { passStatesOf } from '../../../src/core/job/place';
import { boltState, passState } from '../../../src/core/job/tightening';
import { atFirstPass, bolt, codes, markAt, notSure, passes, setAt, soFar } from './workbench';

const WORK = 'tighten.tighten-left.first.work';

describe('a pass', () => {
  test('begins only when the right number is read back', () => {
    const w = atFirstPass();
    expect(w.node).toBe('tighten.tighten-left.first.set');
    expect(codes(w.give(bolt(1)))).toEqual(['not-here']);
    expect(codes(w.give(setAt(50)))).toEqual(['setting-wrong']);
    expect(codes(w.give(setAt(30, 'lbf·ft')))).toEqual(['setting-wrong']);
    expect(w.node).toBe('tighten.tighten-left.first.set');
    w.give(setAt(30));
    expect(w.node).toBe(WORK);
  });

  test('is not left with a bolt open', () => {
    const w = atFirstPass();
    w.give(setAt(30));
    for (let n = 1; n <= 9; n++) w.give(bolt(n));
    expect(w.node).toBe(WORK);
    expect(codes(w.give(bolt(10)))).toContain('pass-complete');
    expect(w.node).toBe('tighten.tighten-left.second.set');
  });

  test('next only tells', () => {
    const w = atFirstPass();
    w.give(setAt(30));
    const before = w.job;
    w.give('tell-next');
    expect(w.job).toBe(before);
  });

  test('takes a bare done only while the work flows', () => {
    const w = atFirstPass();
    w.give(setAt(30));
    expect(codes(w.give('done'))).toEqual(['bolt-then-next']);
    w.wait(3 * 60_000 + 1);
    expect(codes(w.give('done'))).toEqual(['which-bolt']);
    w.give(bolt(2));
    expect(codes(w.give('done'))).toEqual(['bolt-then-next']);
  });

  test('shrinks its replies after three bolts in a row', () => {
    const w = atFirstPass();
    w.give(setAt(30));
    const said = [1, 2, 3, 4, 5].map((n) => codes(w.give(bolt(n)))[0]);
    expect(said.slice(0, 3)).toEqual(['bolt-then-next', 'bolt-then-next', 'bolt-then-next']);
  });

  test('keeps a bolt done out of order as the truth and does not end before the rule is applied', () => {
    const w = atFirstPass();
    w.give(setAt(30));
    expect(codes(w.give(bolt(4)))).toEqual(['confirm-out-of-order']);
    expect(codes(w.give(bolt(4)))).toEqual(['bolt-done-out-of-order']);
    for (const n of [1, 2, 3, 5, 6, 7, 8, 9, 10]) w.give(bolt(n));
    expect(w.node).toBe('tighten.tighten-left.first.sort');
    expect(codes(w.give('done'))).toEqual(['order-to-settle-rule']);
    w.all('repeat-pass', 'confirm');
    expect(w.node).toBe('tighten.tighten-left.first.set');
    expect(w.entries.some((e) => e.kind === 'bolt-done' && e.bolt === 4 && !e.inOrder)).toBe(true);
  });

  test('can go ahead on purpose after work out of order, which is written down as an override', () => {
    const w = atFirstPass();
    w.give(setAt(30));
    for (const n of [2, 2, 1, 3, 4, 5, 6, 7, 8, 9, 10]) w.give(bolt(n));
    expect(w.give('go-ahead-anyway').verdict).toBe('asked');
    expect(w.node).toBe('tighten.tighten-left.first.sort');
    w.give('confirm');
    expect(w.node).toBe('tighten.tighten-left.second.set');
    expect(w.entries.some((e) => e.kind === 'order-accepted' && e.override)).toBe(true);
  });
});

describe('an angle pass', () => {
  test('needs its heads marked before a bolt counts', () => {
    const w = atFirstPass();
    passes(w, 3);
    w.give(setAt(90));
    expect(w.node).toBe('tighten.tighten-left.turn.mark');
    expect(codes(w.give(bolt(1)))).toEqual(['not-here']);
    w.give('all-marked');
    expect(w.node).toBe('tighten.tighten-left.turn.work');
  });

  const turning = () => {
    const w = atFirstPass();
    passes(w, 3);
    w.all(setAt(90), 'all-marked');
    return w;
  };

  test('adds swings up and does not take a short one', () => {
    const w = turning();
    expect(codes(w.give(soFar(45)))).toEqual(['angle-so-far']);
    expect(codes(w.give(bolt(1)))).toEqual(['angle-short']);
    expect(codes(w.give(soFar(30)))).toEqual(['angle-not-more']);
    expect(codes(w.give(soFar(90)))).toEqual(['angle-heard', 'bolt-then-next']);
  });

  test('holds a bolt turned past its window under the rule of the document', () => {
    const w = turning();
    expect(codes(w.give(soFar(100)))).toEqual(['angle-heard', 'fault-rule']);
    expect(codes(w.give(bolt(1)))).toEqual(['bolt-held']);
    w.all('slacken-all', 'confirm');
    expect(w.node).toBe('tighten.tighten-left.first.set');
  });

  test('leaves the bolt at the cursor UNKNOWN after an interruption and takes only its mark as proof', () => {
    const w = turning();
    w.all(bolt(1), 'hold-on', 'im-back');
    expect(codes(w.give(bolt(2)))).toEqual(['bolt-unknown']);
    expect(codes(w.give('done'))).toEqual(['bolt-unknown']);
    expect(codes(w.give(markAt(6)))).toEqual(['mark-proves-nothing']);
    expect(codes(w.give(markAt(12)))).toEqual(['confirm-mark']);
    expect(codes(w.give(markAt(12)))).toEqual(['mark-proves-open', 'next-bolt-angle']);
    w.give(bolt(2));
    w.give(notSure(2));
    expect(codes(w.give(bolt(2)))).toEqual(['bolt-unknown']);
    expect(codes(w.give(markAt(3)))).toEqual(['confirm-mark']);
    expect(codes(w.give('confirm'))).toEqual(['mark-proves-done', 'next-bolt-angle']);
  });

  test('never lets a torque pass be repeated', () => {
    const w = turning();
    w.give(bolt(1));
    expect(codes(w.give('repeat-pass'))).toEqual(['repeat-refused-kind']);
  });

  test('taking an angle back asks whether it was turned, and only a clear "not turned" opens the bolt', () => {
    const w = turning();
    w.give(bolt(1));
    expect(codes(w.give('take-back'))).toEqual(['taken-back', 'turned-or-not']);
    expect(codes(w.give('tell-next'))).toBeDefined();
    w.give('turned');
    expect(codes(w.give(bolt(1)))).toEqual(['bolt-unknown']);
    expect(codes(w.give('take-back'))).toEqual(['undo-blocked']);

    const v = turning();
    v.all(bolt(1), 'take-back', 'not-turned');
    expect(codes(v.give(bolt(1)))[0]).toBe('bolt-then-next');
  });

  test('gives a bolt back as it was when a doubt that was only said is taken back', () => {
    const w = turning();
    const state = () => boltState(passState(passStatesOf(w.job, 'tighten-left'), 'turn'), 1).kind;
    w.all(bolt(1), notSure(1));
    expect(state()).toBe('unknown');
    w.give('take-back');
    expect(state()).toBe('done');
    expect(codes(w.give('take-back'))).toEqual(['taken-back', 'turned-or-not']);
    expect(state()).toBe('unknown');
  });
});

describe('taking back', () => {
  test('crosses a pass boundary', () => {
    const w = atFirstPass();
    passes(w, 1);
    expect(w.node).toBe('tighten.tighten-left.second.set');
    expect(codes(w.give('take-back'))).toContain('taken-back');
    expect(w.node).toBe(WORK);
    w.give(bolt(10));
    expect(w.node).toBe('tighten.tighten-left.second.set');
  });

  test('goes one further each time, and not across a read-back', () => {
    const w = atFirstPass();
    w.all(setAt(30), bolt(1), bolt(2));
    w.all('take-back', 'take-back', 'take-back');
    expect(w.node).toBe('tighten.tighten-left.first.set');
    w.all('take-back', 'take-back');
    expect(w.node).toBe('set-down.head-down');
    expect(codes(w.give('take-back'))).toEqual(['undo-blocked']);
  });
});

test('every prefix of a log folds to the job it was then', () => {
  const w = atFirstPass();
  w.all(setAt(30), bolt(1), bolt(3), 'take-back', bolt(2), 'hold-on', 'im-back', bolt(3));
  const whole = fold(w.job.plan, w.entries);
  expect(whole).toEqual(w.job);
});
