import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sha256Hex } from '../../src/store/hash';
import { nodeHash } from '../core/log/sample-log';

test.each([
  ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad', 'NIST FIPS 180-2 appendix B.1'],
  [
    'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
    '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1',
    'NIST FIPS 180-2 appendix B.2, from memory',
  ],
  ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855', 'the empty message, from memory'],
])('SHA-256 of %o is the published digest (%s, %s)', (text, digest) => {
  expect(sha256Hex(text)).toBe(digest);
});

test('agrees with another implementation on any text, hashed as UTF-8', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 500 }), (text) => {
      expect(sha256Hex(text)).toBe(nodeHash(text));
    }),
  );
});
