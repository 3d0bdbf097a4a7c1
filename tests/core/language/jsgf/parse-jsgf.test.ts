import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mendWords } from '../../../../src/cli/mend-words';
import type { Phrase } from '../../../../src/core/language/grammar';
import { type JsgfIssue, parseJsgf } from '../../../../src/core/language/jsgf/parse-jsgf';
import { SEED, tries } from '../../../long';

const w = (text: string): Phrase => ({ kind: 'word', text });
const seq = (...parts: Phrase[]): Phrase => ({ kind: 'seq', parts });
const oneOf = (...parts: Phrase[]): Phrase => ({ kind: 'oneOf', parts });

function phraseOf(expansion: string): Phrase | readonly JsgfIssue[] | undefined {
  const parsed = parseJsgf(`#JSGF V1.0;\ngrammar t;\n<r> = ${expansion};`);
  return parsed.ok ? parsed.value.rules[0]?.phrase : parsed.error;
}

describe('the expansions of the JSGF Note (W3C, 5 June 2000) become phrases', () => {
  test.each<readonly [name: string, text: string, phrase: Phrase, partOfTheNote: string]>([
    ['one token', 'hello', w('hello'), 'rule expansions'],
    ['a quoted token with a space', '"New York"', w('New York'), 'tokens'],
    ['a quoted token with a quote', '"say \\"stop\\""', w('say "stop"'), 'tokens'],
    ['a sequence', 'a b c', seq(w('a'), w('b'), w('c')), 'composition'],
    ['alternatives', 'a | b', oneOf(w('a'), w('b')), 'composition'],
    ['a sequence binds tighter than |', 'a b | c', oneOf(seq(w('a'), w('b')), w('c')), 'precedence'],
    ['weights', '/10/ a | /2.5/ b', { ...oneOf(w('a'), w('b')), weights: [10, 2.5] } as Phrase, 'weights'],
    ['a group', 'a (b | c)', seq(w('a'), oneOf(w('b'), w('c'))), 'grouping'],
    ['an optional', '[a] b', seq({ kind: 'optional', part: w('a') }, w('b')), 'grouping'],
    ['zero or more', 'a b*', seq(w('a'), { kind: 'repeat', part: w('b'), least: 0 }), 'unary operators'],
    ['one or more', '(a b)+', { kind: 'repeat', part: seq(w('a'), w('b')), least: 1 }, 'unary operators'],
    ['a tag on a token', 'a {T}', { kind: 'tagged', part: w('a'), tag: 'T' }, 'tags'],
    ['a tag binds to one token', 'a b {T}', seq(w('a'), { kind: 'tagged', part: w('b'), tag: 'T' }), 'tags'],
    ['escaped braces in a tag', 'a {x\\}y}', { kind: 'tagged', part: w('a'), tag: 'x}y' }, 'tags'],
    ['a rule', '<b.c>', { kind: 'rule', name: 'b.c' }, 'rule expansions'],
    ['the silent rule', '<NULL>', { kind: 'null' }, 'special rulenames'],
    ['the impossible rule', '<VOID>', { kind: 'void' }, 'special rulenames'],
    ['comments', 'a /* x; */ b // y;\n c', seq(w('a'), w('b'), w('c')), 'comments'],
    ['an apostrophe in a word', "what's next", seq(w("what's"), w('next')), 'tokens'],
  ])('%s: %s', (_name, text, phrase) => {
    expect(phraseOf(text)).toEqual(phrase);
  });
});

test('header, name, imports and rules are kept with their places', () => {
  const parsed = parseJsgf('#JSGF V1.0 UTF-8 en;\n// note\ngrammar a.b;\nimport <c.*>;\npublic <x> = y;\n  <z> = <x>;');
  expect(parsed).toEqual({
    ok: true,
    value: {
      name: 'a.b',
      imports: ['c.*'],
      rules: [
        { name: 'x', isPublic: true, phrase: w('y'), line: 5, column: 8 },
        { name: 'z', isPublic: false, phrase: { kind: 'rule', name: 'x' }, line: 6, column: 3 },
      ],
    },
  });
});

describe('what cannot be read is reported with its place', () => {
  const head = '#JSGF V1.0;\ngrammar t;\n';
  test.each<readonly [name: string, text: string, code: string, line: number, column: number]>([
    ['no header', 'grammar t;', 'no-header', 1, 1],
    ['an older header', '#JSGF V0.9;\ngrammar t;', 'no-header', 1, 1],
    ['no grammar name', '#JSGF V1.0;\n<a> = b;', 'no-grammar-name', 2, 1],
    ['no equals sign', `${head}<a> b;`, 'unexpected', 3, 5],
    ['no semicolon', `${head}<a> = b`, 'unclosed', 3, 8],
    ['an open group', `${head}<a> = (b | c;`, 'unexpected', 3, 13],
    ['an open quotation', `${head}<a> = "b;`, 'unclosed', 3, 7],
    ['an open tag', `${head}<a> = b {c;`, 'unclosed', 3, 9],
    ['an open rule name', `${head}<a> = <b c;`, 'unclosed', 3, 7],
    ['nothing between bars', `${head}<a> = b | | c;`, 'empty', 3, 11],
    ['an empty group', `${head}<a> = ();`, 'empty', 3, 8],
    ['an empty quotation', `${head}<a> = "";`, 'empty', 3, 7],
    ['a weight that is no number', `${head}<a> = /x/ b | /1/ c;`, 'bad-weight', 3, 7],
    ['a weight below nothing', `${head}<a> = /-1/ b | /1/ c;`, 'bad-weight', 3, 7],
    ['weights on some alternatives', `${head}<a> = /1/ b | c;`, 'mixed-weights', 3, 7],
    ['a backslash in the open', `${head}<a> = b \\ c;`, 'unexpected', 3, 9],
    ['a group too deep', `${head}<a> = ${'('.repeat(70)}b${')'.repeat(70)};`, 'too-deep', 3, 67],
  ])('%s', (_name, text, code, line, column) => {
    const parsed = parseJsgf(text);
    expect(parsed.ok ? [] : parsed.error).toContainEqual(expect.objectContaining({ code, line, column }));
    expect(parsed.ok ? [''] : parsed.error.map((issue) => mendWords(issue.mend))).not.toContain('');
  });

  test('reading goes on after a bad rule, so that all issues are told at once', () => {
    const parsed = parseJsgf(`${head}<a> = ;\n<b> = c;\n<d> = (e;`);
    expect(parsed.ok ? [] : parsed.error.map(({ code, line }) => [code, line])).toEqual([
      ['empty', 3],
      ['unexpected', 5],
    ]);
  });

  test('a text beyond a million characters is refused before it is read', () => {
    const parsed = parseJsgf(`${head}<a> = ${'b '.repeat(500_001)};`);
    expect(parsed.ok ? [] : parsed.error.map(({ code }) => code)).toEqual(['too-long']);
  });
});

describe('no text makes the parser throw', () => {
  const sign = fc.constantFrom(
    ...'#JSGF V1.0;|grammar|public|import|<a>|=|a|(|)|[|]|*|+|{t}|/2/|/*|*/|//|"|\\|<|>'.split('|'),
  );
  test('any characters', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200, unit: 'binary' }), (text) => {
        expect(typeof parseJsgf(text).ok).toBe('boolean');
      }),
      { numRuns: tries(300, 20_000), seed: SEED },
    );
  });
  test('any order of the signs of JSGF', () => {
    fc.assert(
      fc.property(fc.array(sign, { maxLength: 60 }), (signs) => {
        expect(typeof parseJsgf(`#JSGF V1.0;grammar t;<r> = ${signs.join(' ')}`).ok).toBe('boolean');
      }),
      { numRuns: tries(500, 20_000), seed: SEED },
    );
  });
});
