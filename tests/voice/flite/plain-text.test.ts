import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LONGEST_TEXT, plainText } from '../../../src/voice/flite/plain-text';

test.each([
  { why: 'plain words are left alone', text: 'Bolt seven, done.', plain: 'Bolt seven, done.' },
  { why: 'accents are folded away', text: 'Crémaillère à vis', plain: 'Cremaillere a vis' },
  { why: 'curly quotes become straight', text: 'what’s still off', plain: "what's still off" },
  { why: 'controls and line ends become spaces', text: ' seven\u0000\t done\r\n', plain: 'seven done' },
  { why: 'a sign nobody spelt out is passed over', text: '40 N·m ± 2', plain: '40 N m 2' },
  { why: 'options stay words', text: '--help -o x', plain: '--help -o x' },
])('$why', ({ text, plain }) => {
  expect(plainText(text)).toBe(plain);
});

test.each(['', '   ', '...', '- ! -', '\u0000\u0007', '螺栓'])('%j has nothing sayable in it', (text) => {
  expect(plainText(text)).toBe('');
});

describe('a text without end', () => {
  test('is cut at a space', () => {
    const cut = plainText('turn and stop. '.repeat(500));
    expect(cut.length).toBeLessThanOrEqual(LONGEST_TEXT);
    expect(cut).toMatch(/(turn|and|stop\.)$/);
  });

  test('is cut anyway when it has none', () => {
    expect(plainText('x'.repeat(5000))).toHaveLength(LONGEST_TEXT);
  });
});

test('whatever comes in, what goes out is short printable ASCII on one line', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 1000 }), (text) => {
      expect(plainText(text)).toMatch(/^[\x20-\x7e]*$/);
      expect(plainText(text).length).toBeLessThanOrEqual(LONGEST_TEXT);
    }),
  );
});
