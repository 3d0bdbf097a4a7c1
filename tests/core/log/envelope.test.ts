import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LONGEST_ENTRY, NO_PREVIOUS, seal, unseal } from '../../../src/core/log/envelope';
import { LOG_VERSION } from '../../../src/core/log/version';
import { nodeHash } from './sample-log';

const STAMP = {
  v: 1,
  seq: 1,
  prev: NO_PREVIOUS,
  at: 1_700_000_000_000,
  mono: 12.5,
  session: 's1',
  who: 'Mechanic',
} as const;

const codeOf = (text: string) => {
  const read = unseal(text, nodeHash);
  return read.ok ? 'ok' : read.error.code;
};

/** A text as a careful forger would leave it: sorted, and with a hash that fits. */
function forged(change: Record<string, unknown>): string {
  const entry = { at: 1, kind: 'held', mono: 1, prev: NO_PREVIOUS, seq: 1, session: 's1', v: 1, who: 'm', ...change };
  const sorted = (of: Record<string, unknown>) => JSON.stringify(of, Object.keys(of).sort());
  return sorted({ ...entry, hash: nodeHash(sorted(entry)) });
}

describe('a sealed entry', () => {
  const { entry, sealed } = seal({ kind: 'bolt-done', bolt: 7 }, STAMP, nodeHash);

  test('is its body, its stamp and a hash, sorted, in one line', () => {
    const hash = nodeHash(
      `{"at":1700000000000,"bolt":7,"kind":"bolt-done","mono":12.5,"prev":"${NO_PREVIOUS}","seq":1,"session":"s1","v":1,"who":"Mechanic"}`,
    );
    expect(sealed.text).toBe(
      `{"at":1700000000000,"bolt":7,"hash":"${hash}","kind":"bolt-done","mono":12.5,"prev":"${NO_PREVIOUS}","seq":1,"session":"s1","v":1,"who":"Mechanic"}`,
    );
    expect(sealed).toMatchObject({ seq: 1, prev: NO_PREVIOUS, hash });
    expect(entry).toEqual(JSON.parse(sealed.text));
  });

  test('opens again as it was, whatever it says', () => {
    fc.assert(
      fc.property(fc.dictionary(fc.string(), fc.jsonValue({ stringUnit: 'binary' })), (says) => {
        fc.pre(!JSON.stringify(says).includes('__proto__'));
        const made = seal({ kind: 'noted', says }, STAMP, nodeHash);
        expect(unseal(made.sealed.text, nodeHash)).toEqual({ ok: true, value: JSON.parse(made.sealed.text) });
      }),
    );
  });

  test('that cannot be written is a bug and throws, and so is one that could not be read again', () => {
    expect(() => seal({ kind: 'measured', value: Number.NaN }, STAMP, nodeHash)).toThrow('not-finite at /value');
    expect(() => seal({ kind: 'noted', text: 'x'.repeat(LONGEST_ENTRY) }, STAMP, nodeHash)).toThrow('characters');
  });
});

describe('a text that is not an entry of ours', () => {
  const good = forged({});
  test.each([
    ['the untouched control', good, 'ok'],
    ['nothing', '', 'not-an-entry'],
    ['half an entry', good.slice(0, 50), 'not-an-entry'],
    ['a list', '[]', 'not-an-entry'],
    ['null', 'null', 'not-an-entry'],
    ['no kind', forged({ kind: undefined }), 'not-an-entry'],
    ['an empty kind', forged({ kind: '' }), 'not-an-entry'],
    ['a fractional number', forged({ seq: 1.5 }), 'not-an-entry'],
    ['number nought', forged({ seq: 0 }), 'not-an-entry'],
    ['a time that is text', forged({ at: '1' }), 'not-an-entry'],
    ['a short previous hash', forged({ prev: 'abc' }), 'not-an-entry'],
    ['fields taken from a prototype', '{"__proto__":{"v":1,"seq":1}}', 'not-an-entry'],
    ['a prototype by name in a good entry', good.replace('"at":1', '"__proto__":1,"at":1'), 'not-an-entry'],
    ['a version of tomorrow', forged({ v: LOG_VERSION + 1 }), 'newer-log'],
    ['a space', good.replace(':', ': '), 'not-canonical'],
    ['other words for the same number', good.replace('"at":1,', '"at":1.0,'), 'not-canonical'],
    ['a member twice', good.replace('"at":1,', '"at":1,"at":1,'), 'not-canonical'],
    ['another person', good.replace('"who":"m"', '"who":"n"'), 'bad-hash'],
    ['a text longer than any', `"${'x'.repeat(LONGEST_ENTRY)}"`, 'too-big'],
    ['a nest of brackets', '['.repeat(200_000), 'not-an-entry'],
    ['a nest of brackets that closes', `{"v":1,"a":${'['.repeat(100_000)}${']'.repeat(100_000)}}`, 'not-an-entry'],
    [
      'a deep nest in a good entry',
      good.replace('"at":1', `"a":${'['.repeat(9999)}${']'.repeat(9999)},"at":1`),
      'not-an-entry',
    ],
  ])('%s', (_, text, code) => {
    expect(codeOf(text)).toBe(code);
  });

  test('any text at all gets an answer', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.json()), (text) => {
        expect(unseal(text, nodeHash).ok).toBe(false);
      }),
    );
  });
});
