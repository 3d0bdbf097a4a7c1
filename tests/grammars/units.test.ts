import { describe, expect, test } from 'vitest';
import { UNIT_NAMES } from '../../src/core/fastening/unit';
import { interpret } from '../../src/core/language/interpret';
import { liveGrammar } from '../../src/core/language/live-grammar';
import { everyLanguage, readingOf, wellFormed } from './language';

/** What the voice says of units, a person must be able to say back. */
describe.each(await everyLanguage())('$code can say every unit as its voice says it', ({ tongue, book, samples }) => {
  const { units, numbers } = tongue.replies.words;
  const twelve = numbers.belowHundred[12];

  test.each(UNIT_NAMES)('%s', (name) => {
    const slots = { reading: readingOf(1, 20, 0, [name], true) };
    const live = wellFormed(liveGrammar(book, [{ rule: 'measured', manner: 'progress', slots }], 'r'));
    for (const unit of new Set([units[name].one, units[name].many]))
      expect(interpret(live, `${samples.reading} ${twelve} ${unit}`)).toMatchObject({
        kind: 'command',
        slots: { reading: { kind: 'reading', value: 12, unit: name } },
      });
  });
});
