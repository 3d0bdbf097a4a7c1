import { describe, expect, test } from 'vitest';
import type { Offer, SlotDomain } from '../../../src/core/language/grammar';
import { interpret } from '../../../src/core/language/interpret';
import { liveGrammar } from '../../../src/core/language/live-grammar';
import { english, oneOfThese, readingOf, upTo, wellFormed } from '../../grammars/en/english';

const offer = (rule: string, slots: Readonly<Record<string, SlotDomain>> = {}): Offer => ({
  rule,
  manner: 'progress',
  slots,
});

describe('offers that do not fit the grammar file are refused, each with its reason', () => {
  test.each<readonly [name: string, offers: readonly Offer[], issue: object]>([
    ['a command nobody wrote', [offer('dance')], { code: 'unknown-command', rule: 'dance' }],
    ['a part instead of a command', [offer('number')], { code: 'unknown-command', rule: 'number' }],
    ['one command twice', [offer('done'), offer('done')], { code: 'offered-twice', rule: 'done' }],
    ['a slot left empty', [offer('bolt-done')], { code: 'slot-not-filled', rule: 'bolt-done', slot: 'bolt' }],
    ['a slot too many', [offer('done', { bolt: upTo(3) })], { code: 'slot-not-in-rule', rule: 'done', slot: 'bolt' }],
    [
      'a named slot left to its rule',
      [offer('tell-in-unit')],
      { code: 'slot-not-filled', rule: 'tell-in-unit', slot: 'unit' },
    ],
    [
      'half a bolt',
      [offer('bolt-done', { bolt: { kind: 'integers', values: [1.5] } })],
      { code: 'domain-out-of-order', slot: 'bolt', given: '1.5' },
    ],
    [
      'a range upside down',
      [offer('measured', { reading: readingOf(200, 100) })],
      { code: 'domain-out-of-order', slot: 'reading', given: '200–100' },
    ],
    [
      'a unit without words',
      [offer('measured', { reading: readingOf(1, 2, 0, ['furlong']) })],
      { code: 'unknown-name', slot: 'reading', given: 'furlong' },
    ],
    [
      'a reason without words',
      [offer('sign-off', { end: oneOfThese('hose'), reason: { kind: 'named', ids: ['because'] } })],
      { code: 'unknown-name', slot: 'reason', given: 'because' },
    ],
    [
      'an answer of signs',
      [offer('answer', { answer: { kind: 'options', options: [{ id: 'x', say: ['---'] }] } })],
      { code: 'not-sayable', slot: 'answer', given: 'x: "---"' },
    ],
  ])('%s', (_name, offers, issue) => {
    const live = liveGrammar(english, offers, 'r');
    expect(live.ok ? [] : live.error).toEqual([expect.objectContaining(issue)]);
  });
});

test('a command whose slot has nothing to say is left out, the others stay', () => {
  const end: SlotDomain = { kind: 'options', options: [] };
  const live = wellFormed(liveGrammar(english, [offer('end-closed', { end }), offer('done')], 'r'));
  expect(live.commands.map(({ rule }) => rule)).toEqual(['done']);
});

test('one slot name can have another content in each command', () => {
  const offers = [
    offer('bolt-done', { bolt: { kind: 'integers', values: [3, 7] } }),
    offer('tell-bolt', { bolt: upTo(10) }),
  ];
  const live = wellFormed(liveGrammar(english, offers, 'r'));
  expect(interpret(live, 'have i done bolt nine').kind).toBe('command');
  expect(interpret(live, 'bolt nine done')).toEqual({ kind: 'almost', rule: 'bolt-done', slot: 'bolt', given: '9' });
});

test('figures in the texts of a document are said as numbers', () => {
  const live = wellFormed(
    liveGrammar(english, [offer('end-closed', { end: oneOfThese('M10 stud, cylinder 12') })], 'r'),
  );
  for (const said of [
    'M10 stud, cylinder 12 is closed',
    'the m ten stud cylinder twelve is closed',
    'm one zero stud cylinder one two is closed',
  ])
    expect(interpret(live, said)).toMatchObject({ kind: 'command', rule: 'end-closed' });
});

test('a live grammar is plain data that survives a crossing to a worker', () => {
  const live = wellFormed(
    liveGrammar(english, [offer('bolt-done', { bolt: upTo(4) }), offer('stop')], 'job 7, bolt 3'),
  );
  const crossed = structuredClone(live);
  expect(crossed).toEqual(live);
  expect(crossed.revision).toBe('job 7, bolt 3');
  expect(interpret(crossed, 'bolt two done')).toEqual(interpret(live, 'bolt two done'));
});

describe('two readings of the same words are told, not chosen', () => {
  test('the same command with other values', () => {
    const place: SlotDomain = { kind: 'integers', values: [1, 16] };
    const live = wellFormed(
      liveGrammar(english, [offer('measured-at', { place, reading: readingOf(5, 200), gauged: upTo(0) })], 'r'),
    );
    expect(interpret(live, 'number one six five')).toEqual({ kind: 'ambiguous', rules: ['measured-at'] });
    expect(interpret(live, 'number one reads six five')).toMatchObject({
      kind: 'command',
      slots: { place: { value: 1 } },
    });
  });

  test('two commands with the same words', () => {
    const thing = oneOfThese('pump');
    const twins = { ...english, rules: new Map([...english.rules, ['done', { kind: 'word' as const, text: 'stop' }]]) };
    const live = wellFormed(
      liveGrammar(twins, [offer('done'), offer('stop'), offer('end-closed', { end: thing })], 'r'),
    );
    expect(interpret(live, 'stop')).toEqual({ kind: 'ambiguous', rules: ['done', 'stop'] });
  });
});
