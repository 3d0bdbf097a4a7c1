import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Phrase } from '../../../../src/core/language/grammar';
import { parseJsgf } from '../../../../src/core/language/jsgf/parse-jsgf';
import { printJsgf } from '../../../../src/core/language/jsgf/print-jsgf';
import { grammarText } from '../../../grammars/en/english';

const text = fc.string({ minLength: 1, maxLength: 8 });
const weight = fc.integer({ min: 0, max: 1e6 }).map((n) => n / 1000);

/** Phrases as the parser makes them: sequences and alternatives of two parts or more, one with a weight. */
const { phrase } = fc.letrec<{ phrase: Phrase }>((tie) => ({
  phrase: fc.oneof(
    { maxDepth: 4, depthSize: 'small' },
    text.map((word): Phrase => ({ kind: 'word', text: word })),
    fc.constantFrom<Phrase>({ kind: 'null' }, { kind: 'void' }, { kind: 'rule', name: 'other' }),
    fc.array(tie('phrase'), { minLength: 2, maxLength: 3 }).map((parts): Phrase => ({ kind: 'seq', parts })),
    fc.array(tie('phrase'), { minLength: 2, maxLength: 3 }).map((parts): Phrase => ({ kind: 'oneOf', parts })),
    fc.array(fc.tuple(tie('phrase'), weight), { minLength: 1, maxLength: 3 }).map(
      (some): Phrase => ({
        kind: 'oneOf',
        parts: some.map(([part]) => part),
        weights: some.map(([, value]) => value),
      }),
    ),
    tie('phrase').map((part): Phrase => ({ kind: 'optional', part })),
    fc
      .tuple(tie('phrase'), fc.constantFrom<0 | 1>(0, 1))
      .map(([part, least]): Phrase => ({ kind: 'repeat', part, least })),
    fc.tuple(tie('phrase'), text).map(([part, tag]): Phrase => ({ kind: 'tagged', part, tag: tag.trim() })),
  ),
}));

test('reading back what was printed gives the same phrases', () => {
  fc.assert(
    fc.property(phrase, (some) => {
      const file = {
        name: 'printed',
        imports: ['a.*'],
        rules: [{ name: 'r', isPublic: true, phrase: some, line: 4, column: 8 }],
      };
      expect(parseJsgf(printJsgf(file))).toEqual({ ok: true, value: file });
    }),
    { numRuns: 300 },
  );
});

test.each(['commands.jsgf', 'numbers.jsgf'])('%s survives printing', (name) => {
  const read = parseJsgf(grammarText(name).text);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  const again = parseJsgf(printJsgf(read.value));
  const phrases = (file: typeof read.value) => file.rules.map((rule) => [rule.name, rule.isPublic, rule.phrase]);
  expect(again.ok ? phrases(again.value) : again.error).toEqual(phrases(read.value));
});
