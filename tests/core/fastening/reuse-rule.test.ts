import { describe, expect, test } from 'vitest';
import { base, millimetres } from '../../../src/core/fastening/quantity';
import { type FastenerEvidence, type ReuseRule, reuseVerdict } from '../../../src/core/fastening/reuse-rule';

const NAMED = { name: 'as the document says', source: 'common practice; makers differ' } as const;
const pair = (a: number, b: number): FastenerEvidence => ({ threadDiameters: [millimetres(a), millimetres(b)] });
const difference = (most: number): ReuseRule => ({ ...NAMED, kind: 'thread-difference', most: millimetres(most) });
const FLOOR: ReuseRule = { ...NAMED, kind: 'final-torque', over: base<'torque'>(90, 'lbf·ft') };
const read = (pounds: number): FastenerEvidence => ({ finalTorque: base<'torque'>(pounds, 'lbf·ft') });

describe('the same bolt can pass one rule and fail another', () => {
  test.each<[string, ReuseRule, FastenerEvidence, string]>([
    ['never, however good it looks', { ...NAMED, kind: 'never' }, { straightedgeTouches: true }, 'replace'],
    ['straightedge touches every crest', { ...NAMED, kind: 'straightedge' }, { straightedgeTouches: true }, 'reuse'],
    ['straightedge shows a gap', { ...NAMED, kind: 'straightedge' }, { straightedgeTouches: false }, 'replace'],
    ['thread 0.15 mm thinner, 0.11 allowed', difference(0.11), pair(9.9, 9.75), 'replace'],
    ['thread 0.15 mm thinner, 0.18 allowed', difference(0.18), pair(9.9, 9.75), 'reuse'],
    ['thread 0.25 mm thinner, 0.25 allowed', difference(0.25), pair(9.9, 9.65), 'reuse'],
    ['thread 0.26 mm thinner, 0.25 allowed', difference(0.25), pair(9.64, 9.9), 'replace'],
    ['at its longest', { ...NAMED, kind: 'length', most: millimetres(140) }, { length: millimetres(140) }, 'reuse'],
    ['too long', { ...NAMED, kind: 'length', most: millimetres(140) }, { length: millimetres(140.1) }, 'replace'],
    ['82 lbf·ft after the last turn, over 90 wanted', FLOOR, read(82), 'replace'],
    ['90 lbf·ft is not over 90', FLOOR, read(90), 'replace'],
    ['91 lbf·ft', FLOOR, read(91), 'reuse'],
  ])('%s', (_, rule, found, kind) => {
    expect(reuseVerdict(rule, found)).toEqual({ kind });
  });
});

test.each<[ReuseRule, keyof FastenerEvidence]>([
  [{ ...NAMED, kind: 'straightedge' }, 'straightedgeTouches'],
  [difference(0.25), 'threadDiameters'],
  [{ ...NAMED, kind: 'length', most: millimetres(140) }, 'length'],
  [FLOOR, 'finalTorque'],
])('nothing measured is neither yes nor no ($kind)', (rule, what) => {
  expect(reuseVerdict(rule, {})).toEqual({ kind: 'measure', what });
});
