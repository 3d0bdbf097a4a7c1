import { describe, expect, test } from 'vitest';
import { interpret } from '../../../src/core/language/interpret';
import { liveGrammar } from '../../../src/core/language/live-grammar';
import { english, readingOf, wellFormed } from './english';

describe('no torque unit is guessed', () => {
  const slots = { setting: readingOf(1, 200, 0, ['N·m', 'lbf·ft', 'lbf·in'], true) };
  const live = wellFormed(liveGrammar(english, [{ rule: 'set-at', manner: 'progress', slots }], 'r'));
  test.each<readonly [words: string, given: string]>([
    ['set at forty', '40'],
    ['set at forty pounds', '40 lbf'],
    ['set at forty newtons', '40 N'],
    ['set at forty metres', '40 m'],
  ])('%s is asked back', (words, given) => {
    expect(interpret(live, words)).toEqual({ kind: 'almost', rule: 'set-at', slot: 'setting', given });
  });
});
