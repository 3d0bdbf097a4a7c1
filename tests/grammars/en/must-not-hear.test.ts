import { describe, expect, test } from 'vitest';
import type { Meaning } from '../../../src/core/language/grammar';
import { extendable, interpret } from '../../../src/core/language/interpret';
import { liveGrammar } from '../../../src/core/language/live-grammar';
import { english, everything, hear, offerOf, wellFormed } from './english';

const nothing: Meaning = { kind: 'nothing' };

/** Talk that must never be a command, with everything live at once. Twin of must-hear. */
test.each<readonly [words: string, why: string]>([
  ['', 'silence'],
  ['...', 'no words at all'],
  ['right', 'a sound of agreement, a side, a direction'],
  ['all right', 'a sound of agreement'],
  ['yes', 'a sound of agreement'],
  ['yeah', 'a sound of agreement'],
  ['okay', 'a sound of agreement'],
  ['no', 'might take back, might be talk'],
  ['next', 'too short to rest anything on'],
  ['on', 'too short to rest anything on'],
  ['off', 'too short to rest anything on'],
  ['back', 'go back, rear, back off, I am back'],
  ['loose', 'a condition, not an order'],
  ['tight', 'a condition, not an order'],
  ['confirmed', 'half of the confirming phrase'],
  ['agreed', 'half of the confirming phrase'],
  ['yes confirmed', 'near the confirming phrase'],
  ['seven done', 'bolt seven, or seven bolts'],
  ['seven', 'a number alone'],
  ['one sixty five', 'a number alone: 165, or place one and 65'],
  ['three one six five', 'a number alone'],
  ['bolt seven', 'not reported, only named'],
  ['done bolt seven', 'the end of "have i done bolt seven"'],
  ['bolts one through six', 'not reported, only named'],
  ['no nine', 'cancel and a correction, or a note'],
  ['no note', 'cancel, or a note'],
  ["what's left", 'what remains, or the left side'],
  ['left', 'a side, or what remains'],
  ['note', 'a note needs its own phrase'],
  ['forty pounds', 'a value without a command'],
  ['oh done', 'a sound and a report'],
  ['bolt oh done', 'not a number'],
  ['bolt one oh done', 'too near to bolt one done'],
  ['bolt to done', 'a word that sounds like two'],
  ['bolt ate done', 'a word that sounds like eight'],
  ['are we done yet', 'talk'],
  ['nearly done', 'talk'],
  ['not done', 'the opposite of a report'],
  ["i'm not done", 'the opposite of a report'],
  ["that's not done", 'the opposite of a report'],
  ['done done', 'said twice, might be two bolts'],
  ['it was not turned', 'the opposite of turned'],
  ['never turned', 'near turned, not the phrase'],
  ['nothing moved', 'half of the phrase'],
  ['not agreed and confirmed', 'the opposite of confirming'],
  ['stop agreed and confirmed', 'two things'],
  ['bolt seven done bolt eight done', 'two things'],
  ['the coolant hose', 'a thing, nothing said about it'],
  ['coolant hose is back', 'half a sentence'],
  ['fuel line is back on', 'not a loose end of this job'],
  ['adapter on', 'how long?'],
])('"%s": %s', (words) => {
  expect(hear(words)).toEqual(nothing);
});

describe('the shape of a command with a value out of place is told apart from talk', () => {
  test.each<readonly [words: string, rule: string, slot: string, given: string]>([
    ['bolt forty done', 'bolt-done', 'bolt', '40'],
    ['bolt eleven done', 'bolt-done', 'bolt', '11'],
    ['bolt zero done', 'bolt-done', 'bolt', '0'],
    ['bolts one through fourteen done', 'bolts-done', 'to', '14'],
    ['forty six so far', 'so-far', 'degrees', '46'],
    ["the mark points at thirteen o'clock", 'mark-at', 'clock', '13'],
    ['reading two hundred and ten', 'measured', 'reading', '210'],
    ['number seven one six five', 'measured-at', 'place', '7'],
    ['set at forty pounds', 'set-at', 'setting', '40 lbf'],
    ['adapter on two', 'adapter-on', 'length', '2'],
    ['in inch pounds', 'tell-in-unit', 'unit', 'lbf·in'],
  ])('"%s": %s, %s, given %s', (words, rule, slot, given) => {
    expect(hear(words)).toEqual({ kind: 'almost', rule, slot, given });
  });
});

describe('"next" only tells', () => {
  test.each(["what's next", 'next step', 'what comes next'])('%s', (words) => {
    expect(hear(words)).toMatchObject({ kind: 'command', rule: 'tell-next' });
  });
});

describe('what is not offered now is not heard', () => {
  const few = wellFormed(
    liveGrammar(
      english,
      ['tell-next', 'stop'].map((rule) => offerOf(rule)),
      'few',
    ),
  );
  test.each(['done', 'bolt seven done', 'agreed and confirmed'])('%s', (words) => {
    expect(interpret(few, words)).toEqual(nothing);
  });
  test('and an empty grammar hears nothing', () => {
    const none = wellFormed(liveGrammar(english, [], 'none'));
    expect(interpret(none, 'stop')).toEqual(nothing);
    expect(extendable(none, '')).toBe(false);
  });
});

describe('an early answer waits where the sentence may go on', () => {
  test.each<readonly [words: string, goesOn: boolean, why: string]>([
    ['', true, 'nothing said yet'],
    ['bolt', true, 'a number comes'],
    ['bolt seven', true, 'done comes'],
    ['bolt seven done', false, 'complete'],
    ['stop', true, 'stop talking'],
    ['done', true, 'with bolt seven'],
    ['set at forty', true, 'five, or a unit'],
    ['set at forty newton metres', false, 'complete'],
    ['went past by', true, 'a number comes'],
    ['went past by five', true, 'degrees'],
    ['purple', false, 'not a beginning of anything'],
    ['done done', false, 'no longer a beginning of anything'],
  ])('"%s" -> %s: %s', (words, goesOn) => {
    expect(extendable(everything, words)).toBe(goesOn);
  });
});
