import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { piecesOf } from '../../../src/cli/authoring/pieces';
import { readPasses } from '../../../src/cli/authoring/read-passes';
import { figureScalar, idFrom, scalar } from '../../../src/cli/authoring/scalar';

test.each([
  ['commas', '30 N·m, 90°', ['30 N·m', '90°']],
  ['semicolons', '30 N·m; 90°', ['30 N·m', '90°']],
  ['a comma without a space behind a unit', '30 N·m,90°', ['30 N·m', '90°']],
  ['a decimal comma', '22,5 N·m, 90°', ['22,5 N·m', '90°']],
  ['commas inside brackets', '170 N·m (1733 kgf·cm, 125 lbf·ft), 90°', ['170 N·m (1733 kgf·cm, 125 lbf·ft)', '90°']],
  ['a comma at the end', '30 N·m,', ['30 N·m']],
  ['nothing', ' , ; ', []],
])('a line is parted at %s', (_name, line, pieces) => {
  expect(piecesOf(line).map(({ text }) => text)).toEqual(pieces);
  for (const { text, column } of piecesOf(line))
    expect(line.slice(column - 1)).toMatch(new RegExp(`^${escapeRegex(text)}`));
});

const escapeRegex = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

describe('the usual stages of a head, as manuals print them', () => {
  // Shapes of common practice: torque and angles; a slackening between; a repeat over a subset.
  const subsets = [
    { name: 'large', numbers: [1, 2] },
    { name: 'small', numbers: [3, 4] },
  ];
  test.each([
    ['30 N·m, 60 N·m, +90°, +90°', ['torque', 'torque', 'angle', 'angle']],
    ['40 N·m, slacken 360°, 20 N·m, 60°, 60°', ['torque', 'slacken', 'torque', 'angle', 'angle']],
    ['20 lbf·ft of large, repeat of large, 10 lbf·ft of small', ['torque', 'repeat', 'torque']],
    ['28-31 lbf·ft, 85-95°, loosen 1 turn, 28-31 lbf·ft', ['torque', 'angle', 'slacken', 'torque']],
    ['40 N·m, wait 10 min, 90 ± 5 deg', ['torque', 'wait', 'angle']],
  ])('%s', (line, kinds) => {
    const passes = readPasses(line, subsets);
    expect(passes.ok && passes.value.map(({ kind }) => kind)).toEqual(kinds);
  });

  test('an angle of a quarter turn is written in degrees with the usual window', () => {
    const passes = readPasses('1/4 turn', []);
    expect(passes.ok && passes.value).toEqual([
      { kind: 'angle', figure: '90° (85–95)', windowAssumed: true, of: null },
    ]);
  });

  test('a repeat is of the torque that these fasteners had, not of others', () => {
    const passes = readPasses('20 N·m of large, 10 N·m of small, repeat of large', subsets);
    expect(passes.ok && passes.value.at(-1)).toMatchObject({ kind: 'repeat', figure: '20 N·m', of: 'large' });
  });
});

describe('texts as they stand in YAML', () => {
  test('come back as they were, whatever they are', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        expect(parse(`{ key: ${scalar(text)} }`)).toEqual({ key: text });
        expect(parse(`key: ${figureScalar(text)}`)).toEqual({ key: text });
      }),
    );
  });

  test.each([
    'true',
    'null',
    '~',
    '12',
    '1.5',
    '.inf',
    'a: b',
    'a #b',
    '- a',
    ' a',
    'a ',
    '',
    '*a',
    '&a',
    '!a',
    '{side}',
  ])('%j is a text and nothing else', (text) => expect(parse(`key: ${scalar(text)}`)).toEqual({ key: text }));

  test('ids made from any name are ids', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme' }),
        (name) => void expect(idFrom(name)).toMatch(/^[a-z][a-z0-9-]{0,63}$/),
      ),
    );
    expect(['Left rocker cover', 'constructor', '32V6', 'Äußere Öse'].map(idFrom)).toEqual([
      'left-rocker-cover',
      'job-constructor',
      'job-32v6',
      'au-ere-ose',
    ]);
  });
});
