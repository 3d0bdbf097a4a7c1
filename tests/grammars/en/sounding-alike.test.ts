import { describe, expect, test } from 'vitest';
import type { Phrase } from '../../../src/core/language/grammar';
import { liveGrammar } from '../../../src/core/language/live-grammar';
import { confusionFinder, TOO_CLOSE } from '../../../src/core/language/sounds/confusability';
import { nearest } from '../../../src/core/language/sounds/nearest';
import { phoneDistance } from '../../../src/core/language/sounds/phone-distance';
import { soundGraph } from '../../../src/core/language/sounds/sound-graph';
import { languageUnderTest } from '../language';
import { english, offerOf, upTo, wellFormed } from './english';
import { SAMPLES } from './samples';

const { sounds, lexicons } = languageUnderTest('en', SAMPLES);
const phones = phoneDistance(sounds);

const soundsOf = (words: string) => {
  const parts = words.split(' ').map((text): Phrase => ({ kind: 'word', text }));
  return soundGraph({ kind: 'seq', parts }, () => ({ kind: 'void' }), lexicons);
};
const apart = (a: string, b: string): number => nearest(soundsOf(a), soundsOf(b), 20, phones)?.distance ?? Number.NaN;

describe('the measure finds the pairs that are known to be confused', () => {
  const source = 'teens and tens: confusable number pairs of radio-telephony practice';
  test.each([
    ['thirteen', 'thirty', source],
    ['fourteen', 'forty', source],
    ['fifteen', 'fifty', source],
    ['sixteen', 'sixty', source],
    ['seventeen', 'seventy', source],
    ['eighteen', 'eighty', source],
    ['nineteen', 'ninety', source],
    ['next', 'necks', 'stray words of a workshop'],
    ['torque', 'talk', 'stray words of a workshop'],
    ['no', 'note', 'measured: no heard as note by synthetic voices'],
    ['tight', 'type', 'stray words of a workshop'],
    ['loose', 'lose', 'stray words of a workshop'],
  ])('%s and %s', (a, b) => {
    expect(apart(a, b)).toBeLessThan(TOO_CLOSE);
  });

  test.each([
    ['one five', 'five zero', 'said digit by digit, the pair is apart'],
    ['one four', 'four zero', 'said digit by digit, the pair is apart'],
    ['agreed and confirmed', 'forget about it', 'the answers to a read-back'],
    ['it was turned', 'nothing moved at all', 'the answers about a mark'],
    ['fife', 'niner', 'the handbook words for five and nine'],
  ])('but not %s and %s', (a, b) => {
    expect(apart(a, b)).toBeGreaterThan(1.5 * TOO_CLOSE);
  });

  test('niner is farther from five than nine is', () => {
    expect(apart('niner', 'fife')).toBeGreaterThan(apart('nine', 'five'));
  });
});

describe('a pattern with teens and tens', () => {
  const many = wellFormed(liveGrammar(english, [offerOf('bolt-done', { bolt: upTo(32) })], 'r'));
  test('is told apart by the finder, since bolts act at once', () => {
    const found = confusionFinder(
      lexicons,
      sounds,
    )(many).filter(({ a, b }) => `${a.words} ${b.words}` === 'thirteen thirty');
    expect(found).toEqual([expect.objectContaining({ slot: 'bolt', stakes: 'acts' })]);
  });
});
