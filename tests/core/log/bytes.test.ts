import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canonical } from '../../../src/core/log/bytes';

const written = (value: unknown) => {
  const text = canonical(value);
  return text.ok ? text.value : text.error;
};

describe('the canonical text of a value', () => {
  test.each([
    {
      what: 'numbers, escapes and literals',
      input: String.raw`{"numbers":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"string":"\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/","literals":[null,true,false]}`,
      text: String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`,
      source: 'RFC 8785 section 3.2.2 and 3.2.3; the same values in the author’s published test data',
    },
    {
      what: 'members by UTF-16 code unit, a surrogate pair before U+FB33',
      input: String.raw`{"\u20ac":1,"1":2,"\u0080":3,"\ud83d\ude02":4,"\u00f6":5,"\ufb33":6,"\r":7}`,
      text: '{"\\r":7,"1":2,"\u0080":3,"ö":5,"€":1,"😂":4,"\ufb33":6}',
      source: 'RFC 8785 section 3.2.3 (order of the sample’s keys)',
    },
    { what: 'minus zero', input: '-0', text: '0', source: 'RFC 8785 appendix B, 8000000000000000' },
    {
      what: 'first exponent upwards',
      input: '1e21',
      text: '1e+21',
      source: 'RFC 8785 author’s test data, 444b1ae4d6e2ef50',
    },
    {
      what: 'last plain fraction',
      input: '0.000001',
      text: '0.000001',
      source: 'RFC 8785 author’s test data, 3eb0c6f7a0b5ed8d',
    },
    {
      what: 'an odd integer past 2^53',
      input: '9007199254740993',
      text: '9007199254740992',
      source: 'IEEE 754 binary64, ties to even',
    },
  ])('$what', ({ input, text }) => {
    expect(written(JSON.parse(input))).toBe(text);
  });

  test('is the same whatever order the members were given in', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string(), fc.jsonValue()), (members) => {
        const entries = Object.entries(members).filter(([key]) => key !== '__proto__');
        const forwards = Object.fromEntries(entries);
        const backwards = Object.fromEntries(entries.toReversed());
        expect(written(backwards)).toEqual(written(forwards));
      }),
    );
  });

  test('reads back as the same text', () => {
    fc.assert(
      fc.property(fc.jsonValue({ depthSize: 'medium', stringUnit: 'binary' }), (value) => {
        const text = canonical(value);
        fc.pre(text.ok);
        expect(written(JSON.parse(written(value) as string))).toBe(text.ok && text.value);
      }),
    );
  });

  test('a lone surrogate is escaped, so that the text is always valid Unicode', () => {
    expect(written({ words: 'bolt \ud800' })).toBe('{"words":"bolt \\ud800"}');
  });

  test('a member without a value is left out', () => {
    expect(written({ a: undefined, b: 1 })).toBe('{"b":1}');
  });
});

describe('a value without a canonical text says where', () => {
  const nest = (levels: number): unknown => (levels === 0 ? 1 : [nest(levels - 1)]);
  test.each([
    ['NaN', { torque: [1, Number.NaN] }, 'not-finite', '/torque/1'],
    ['infinity', Number.POSITIVE_INFINITY, 'not-finite', ''],
    ['a function', { a: { 'b/c~d': () => 1 } }, 'not-json', '/a/b~1c~0d'],
    ['a date', { when: new Date(0) }, 'not-json', '/when'],
    ['a hole in a list', [undefined], 'not-json', '/0'],
    ['a prototype by name', JSON.parse('{"a":{"__proto__":1}}'), 'forbidden-key', '/a/__proto__'],
    ['a depth that no entry has', nest(65), 'too-deep', '/0'.repeat(65)],
  ])('%s', (_, value, code, path) => {
    expect(written(value)).toEqual({ code, path });
  });

  test('a cycle ends as too deep instead of never', () => {
    const loop: Record<string, unknown> = {};
    loop.self = loop;
    expect(written(loop)).toMatchObject({ code: 'too-deep' });
  });

  test('the last allowed depth is written', () => {
    expect(written(nest(64))).toBe(`${'['.repeat(64)}1${']'.repeat(64)}`);
  });
});
