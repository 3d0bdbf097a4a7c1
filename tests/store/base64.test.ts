import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fromBase64, toBase64 } from '../../src/store/base64';

test.each([
  ['', ''],
  ['f', 'Zg=='],
  ['fo', 'Zm8='],
  ['foo', 'Zm9v'],
  ['foob', 'Zm9vYg=='],
  ['fooba', 'Zm9vYmE='],
  ['foobar', 'Zm9vYmFy'],
])('%o is %o (RFC 4648 section 10)', (text, coded) => {
  expect(toBase64(new TextEncoder().encode(text))).toBe(coded);
  expect(new TextDecoder().decode(fromBase64(coded))).toBe(text);
});

test('agrees with another implementation on any bytes, also past one piece', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 300 }), fc.constantFrom(1, 400), (bytes, times) => {
      const long = new Uint8Array(bytes.length * times).map((_, at) => bytes[at % bytes.length] ?? 0);
      expect(toBase64(long)).toBe(Buffer.from(long).toString('base64'));
      expect(fromBase64(toBase64(long))).toEqual(long);
    }),
    { numRuns: 30 },
  );
});
