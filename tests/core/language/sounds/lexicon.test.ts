import { expect, test } from 'vitest';
import { readTongue } from '../../../../src/cli/tongue-files';
import { parseLexicon, pronunciations } from '../../../../src/core/language/sounds/lexicon';
import { wellFormed } from '../../../grammars/en/english';

const { phones } = readTongue('en').model;

test('further pronunciations come on further lines, with or without a number', () => {
  const lexicon = wellFormed(
    parseLexicon('# trade words\nthou TH AW\n\nZERO Z IH1 R OW0\nzero(2) Z IY R OW\nzero Z IY R OW\n', phones),
  );
  expect([...lexicon]).toEqual([
    ['thou', [['TH', 'AW']]],
    [
      'zero',
      [
        ['Z', 'IH', 'R', 'OW'],
        ['Z', 'IY', 'R', 'OW'],
      ],
    ],
  ]);
});

test.each<readonly [text: string, issue: object]>([
  ['thou TH AW\nfife', { code: 'no-phones', line: 2, given: 'fife' }],
  ['fife F AI F', { code: 'unknown-phone', line: 1, given: 'AI' }],
])('%j is refused', (text, issue) => {
  const lexicon = parseLexicon(text, phones);
  expect(lexicon.ok ? [] : lexicon.error).toEqual([expect.objectContaining(issue)]);
});

test('pronunciations of several lexicons are put together, each once', () => {
  const [one, other] = ['done D AH N', 'done D UH N\ndone D AH N'].map((text) =>
    wellFormed(parseLexicon(text, phones)),
  );
  if (!one || !other) throw new Error('two lexicons');
  expect(pronunciations('done', [one, other])).toEqual([
    ['D', 'AH', 'N'],
    ['D', 'UH', 'N'],
  ]);
  expect(pronunciations('undone', [one, other])).toEqual([]);
});
