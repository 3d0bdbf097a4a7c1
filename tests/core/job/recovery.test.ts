import { describe, expect, test } from 'vitest';
import { command, type RuleName } from '../../../src/core/job/command';
import { holdOf } from '../../../src/core/job/hold';
import { passStatesOf } from '../../../src/core/job/place';
import { boltState, passState } from '../../../src/core/job/tightening';
import type { Fault, Recovery, RecoveryAction } from '../../../src/core/procedure/procedure';
import { joint } from './joint';
import { bolt, codes, notSure, setAt, soFar, Workbench } from './workbench';

const rule = (fault: Fault, action: RecoveryAction): Recovery => ({ [fault]: { action, say: 'The rule.' } });

const stateOf = (w: Workbench, pass: string, n: number) =>
  boltState(passState(passStatesOf(w.job, 'joint'), pass), n).kind;

/** Two torque passes, the second with a rule, worked to its second bolt. */
function inSecondPass(recovery: Recovery): Workbench {
  const w = new Workbench(joint([{ torque: 30 }, { torque: 60, recovery }]));
  w.all(setAt(30), bolt(1), bolt(2), bolt(3), setAt(60), bolt(1));
  return w;
}

/** An angle pass with a rule, worked to its second bolt. */
function inAngle(recovery: Recovery): Workbench {
  const w = new Workbench(joint([{ torque: 30 }, { angle: 90, recovery }]));
  w.all('have-time', setAt(30), bolt(1), bolt(2), bolt(3), setAt(90), 'all-marked', bolt(1));
  return w;
}

describe('a fault in a torque pass', () => {
  test.each<[RuleName, Fault, RecoveryAction | null, string, string]>([
    ['clicked-early', 'early', 'redo-bolt', 'open', 'p2'],
    ['clicked-early', 'early', null, 'held', 'p2'],
    ['felt-soft', 'soft', null, 'held', 'p2'],
    ['felt-soft', 'soft', 'restart-bolt', 'open', 'p1'],
    ['pulled-through', 'over', 'restart-bolt', 'open', 'p1'],
    ['pulled-through', 'over', 'restart-all', 'held', 'p2'],
    ['pulled-through', 'over', 'accept', 'done', 'p2'],
    ['clicked-early', 'early', 'repeat-pass', 'open', 'p2'],
    ['snapped', 'snapped', null, 'held', 'p2'],
    ['snapped', 'snapped', 'restart-bolt', 'held', 'p2'],
    ['snapped', 'snapped', 'accept', 'held', 'p2'],
  ])('%s under %s: %s leaves it %s, at %s', (said, fault, action, state, pass) => {
    const w = inSecondPass(action ? rule(fault, action) : {});
    w.give(said);
    expect(stateOf(w, 'p2', 2)).toBe(state);
    expect(w.node.split('.')[2]).toBe(pass);
  });
});

describe('a fault in an angle pass', () => {
  // The checker lets no such rule through; the core does not lean on it.
  test.each<[RuleName, Fault, RecoveryAction]>([
    ['went-past', 'over', 'redo-bolt'],
    ['went-past', 'over', 'repeat-pass'],
    ['felt-soft', 'soft', 'redo-bolt'],
  ])('%s is never answered by giving the angle again, even where the document says %s: %s', (said, fault, action) => {
    const w = inAngle(rule(fault, action));
    w.give(said);
    expect(stateOf(w, 'p2', 2)).toBe('held');
    expect(codes(w.give(bolt(2)))).toEqual(['bolt-held']);
  });

  test.each<[RuleName, string]>([
    ['clicked-early', 'a click'],
    ['pulled-through', 'a click'],
    ['clicked-twice', 'a click'],
    ['clicked', 'a click'],
  ])('%s means nothing where there is no click', (said) => {
    expect(inAngle({}).give(said).verdict).toBe('refused');
  });

  test('a torque pass knows no angle', () => {
    expect(inSecondPass({}).give('went-past').verdict).toBe('refused');
    expect(inSecondPass({}).give(soFar(45)).verdict).toBe('refused');
  });
});

describe('a held bolt', () => {
  test('is settled by the word of the manual, asked for and confirmed', () => {
    const w = inSecondPass({});
    w.all('felt-soft', 'go-ahead-anyway');
    expect(stateOf(w, 'p2', 2)).toBe('held');
    w.give('confirm');
    expect(stateOf(w, 'p2', 2)).toBe('open');
  });

  test('past its angle may be left as it is, never turned again', () => {
    const w = inAngle({});
    w.all('went-past', 'go-ahead-anyway', 'confirm');
    expect(stateOf(w, 'p2', 2)).toBe('done');
  });

  test.each<RuleName>(['felt-soft', 'snapped'])('in an angle pass after %s needs a new bolt or slackening', (said) => {
    const w = inAngle({});
    w.give(said);
    expect(codes(w.give('go-ahead-anyway'))).toEqual(['held-needs-new']);
  });

  test('is not put in doubt, which a mark could lift', () => {
    const w = inAngle({});
    w.give('went-past');
    expect(codes(w.give(notSure(2)))).toEqual(['bolt-held']);
    w.all('hold-on', 'im-back');
    expect(stateOf(w, 'p2', 2)).toBe('held');
    w.reopen(1000);
    expect(stateOf(w, 'p2', 2)).toBe('held');
  });
});

describe('a broken bolt', () => {
  test('holds the job in every pass until a new one is in and starts from the first', () => {
    const w = inSecondPass(rule('snapped', 'restart-bolt'));
    w.give('snapped');
    expect(holdOf(w.job)).toEqual({ step: 'joint', pass: 'p2', bolt: 2 });
    expect(codes(w.give(bolt(3)))).toEqual(['job-on-hold']);
    w.give(command('bolt-replaced', { bolt: { kind: 'integer', value: 2 } }));
    expect(holdOf(w.job)).toBeUndefined();
    expect(w.node).toBe('work.joint.p1.set');
    w.all(setAt(30), bolt(2));
    expect(w.node).toBe('work.joint.p2.set');
  });

  test('holds it until all are slack where the rule says all again, new bolt or not', () => {
    const w = inSecondPass(rule('snapped', 'restart-all'));
    w.all('snapped', command('bolt-replaced', { bolt: { kind: 'integer', value: 2 } }));
    expect(codes(w.give(bolt(2)))).toEqual(['job-on-hold']);
    w.all('slacken-all', 'confirm');
    expect(holdOf(w.job)).toBeUndefined();
    expect([1, 2, 3].map((n) => stateOf(w, 'p1', n))).toEqual(['open', 'open', 'open']);
  });

  test('said by mistake can be taken back', () => {
    const w = inSecondPass({});
    w.all('snapped', 'take-back');
    expect(holdOf(w.job)).toBeUndefined();
    w.give(bolt(2));
    expect(stateOf(w, 'p2', 2)).toBe('done');
  });
});

describe('a new bolt', () => {
  test.each<[RecoveryAction | null, string]>([
    [null, 'held'],
    ['accept', 'held'],
    ['redo-bolt', 'held'],
    ['restart-bolt', 'open'],
    ['restart-all', 'held'],
  ])('under the rule %s is %s: it has no passes behind it', (action, state) => {
    const w = inSecondPass(action ? rule('replaced', action) : {});
    w.give(command('bolt-replaced', { bolt: { kind: 'integer', value: 1 } }));
    expect(stateOf(w, 'p2', 1)).toBe(state);
  });
});

describe('repeating a torque pass', () => {
  test('is refused once one of its bolts has had an angle since it was slack', () => {
    const w = new Workbench(joint([{ torque: 30 }, { angle: 90 }, { torque: 60 }]));
    w.all(
      'have-time',
      setAt(30),
      bolt(1),
      bolt(2),
      bolt(3),
      setAt(90),
      'all-marked',
      bolt(1),
      bolt(2),
      bolt(3),
      setAt(60),
      bolt(1),
    );
    expect(codes(w.give('repeat-pass'))).toEqual(['repeat-refused-angle']);
  });

  test('is possible again after a full slackening, and for bolts that had no angle', () => {
    const slackened = new Workbench(joint([{ angle: 90 }, { slacken: 360 }, { torque: 30 }]));
    slackened.all(
      'have-time',
      setAt(90),
      'all-marked',
      bolt(1),
      bolt(2),
      bolt(3),
      bolt(1),
      bolt(2),
      bolt(3),
      setAt(30),
      bolt(1),
    );
    expect(slackened.give('repeat-pass').verdict).toBe('asked');
    const others = new Workbench(
      joint([
        { angle: 90, of: [1, 2] },
        { torque: 30, of: [3] },
      ]),
    );
    others.all('have-time', setAt(90), 'all-marked', bolt(1), bolt(2), setAt(30));
    expect(others.give('repeat-pass').verdict).toBe('asked');
  });
});

test('slackening all makes a wait inside the tightening be waited once more', () => {
  const w = new Workbench(joint([{ torque: 30 }, { wait: 'settling' }, { torque: 60 }]));
  w.all(setAt(30), bolt(1), bolt(2), bolt(3));
  expect(codes(w.give('done'))).toEqual(['timer-runs']);
  w.wait(10 * 60_000);
  w.all('done', setAt(60), bolt(1), 'slacken-all', 'confirm', setAt(30), bolt(1), bolt(2), bolt(3));
  expect(w.node).toBe('work.joint.p2.wait');
  expect(codes(w.give('done'))).toEqual(['timer-runs']);
});
