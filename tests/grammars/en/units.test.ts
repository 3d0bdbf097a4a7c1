import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { UNIT_NAMES } from '../../../src/core/fastening/unit';
import { interpret } from '../../../src/core/language/interpret';
import { liveGrammar } from '../../../src/core/language/live-grammar';
import { english, grammarText, readingOf, wellFormed } from './english';

type Forms = string | { readonly one: string; readonly many: string };

/** The units as the voice says them: what it says, a person must be able to say back. */
const spoken: Readonly<Record<string, Forms>> = parse(grammarText('replies.yaml').text).units;
const formsOf = (name: string): readonly string[] => {
  const forms = spoken[name];
  return forms === undefined ? [] : typeof forms === 'string' ? [forms] : [forms.one, forms.many];
};

describe('every unit of the program can be said as the voice says it', () => {
  test.each(UNIT_NAMES)('%s', (name) => {
    const slots = { reading: readingOf(1, 20, 0, [name], true) };
    const live = wellFormed(liveGrammar(english, [{ rule: 'measured', manner: 'progress', slots }], 'r'));
    const forms = formsOf(name);
    expect(forms.length).toBeGreaterThan(0);
    for (const unit of forms)
      expect(interpret(live, `reading twelve ${unit}`)).toMatchObject({
        kind: 'command',
        slots: { reading: { kind: 'reading', value: 12, unit: name } },
      });
  });
});

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
