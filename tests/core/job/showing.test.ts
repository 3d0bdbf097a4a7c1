import { describe, expect, test } from 'vitest';
import { type Command, command, isAtPorch, MANNERS, type RuleName, SHOWING } from '../../../src/core/job/command';
import { decide } from '../../../src/core/job/decide/decide';
import { offersOf } from '../../../src/core/job/offers';
import { placeOf } from '../../../src/core/job/place';
import { interpret } from '../../../src/core/language/interpret';
import { liveGrammar } from '../../../src/core/language/live-grammar';
import { english, wellFormed } from '../../grammars/en/english';
import { atFirstPass, bolt, setAt, shipped, Workbench } from './workbench';

const PORCH = (Object.keys(MANNERS) as RuleName[]).filter(isAtPorch);

/** A job in each kind of place, made by the commands that lead there. */
function places(): readonly (readonly [string, Workbench])[] {
  const at = (...commands: readonly (Command | RuleName)[]) => {
    const bench = atFirstPass();
    bench.all(...commands);
    return bench;
  };
  return [
    ['at a step', new Workbench(shipped('practice-plate'))],
    ['in a pass', at(setAt(30), bolt(1))],
    ['asked something', at(setAt(30), bolt(1), 'repeat-pass')],
    ['at a break', at(setAt(30), bolt(1), 'hold-on')],
    ['on hold', at(setAt(30), bolt(1), 'snapped')],
  ];
}

describe.each(places())('%s', (_, bench) => {
  const rules = offersOf(bench.job).map(({ rule }) => rule);

  test('every screen can be asked for, and nothing of the porch', () => {
    expect(rules).toEqual(expect.arrayContaining([...SHOWING]));
    expect(rules.filter((rule) => PORCH.some((one) => one === rule))).toEqual([]);
  });

  test.each(SHOWING)('%s is answered, shown, and changes nothing', (rule) => {
    const { entries, replies, effects } = decide(bench.job, command(rule), bench.now());
    expect(entries).toEqual([]);
    expect(replies.map(({ code }) => code)).toEqual([rule]);
    expect(effects).toEqual([rule]);
  });

  test.each(PORCH)('%s is refused, and writes nothing', (rule) => {
    const decision = decide(bench.job, command(rule, { line: { kind: 'integer', value: 1 } }), bench.now());
    expect(decision).toMatchObject({ verdict: 'refused', entries: [], effects: [] });
  });

  test('half of what asks for a screen is nothing', () => {
    const live = wellFormed(liveGrammar(english, offersOf(bench.job), 'now'));
    for (const words of [
      'the record',
      'show me',
      'show',
      'the jobs',
      'the job card',
      'job card',
      'begin procedure two',
    ])
      expect([words, interpret(live, words).kind]).toEqual([words, 'nothing']);
  });
});

test('the places are what they are called', () => {
  expect(places().map(([, bench]) => `${placeOf(bench.job).kind} ${bench.job.pending ? 'asked' : ''}`.trim())).toEqual([
    'step',
    'pass',
    'pass asked',
    'paused',
    'pass',
  ]);
});
