import { expect, test } from 'vitest';
import { isWhole, withKey, withoutLast } from '../../src/ui/bench/tap/number-entry';

const keyed = (keys: string, decimals: number): string =>
  [...keys].reduce((entry, key) => (key === '<' ? withoutLast(entry) : withKey(entry, key, decimals)), '');

test.each([
  { keys: '45', decimals: 0, entry: '45' },
  { keys: '4.5', decimals: 0, entry: '45' },
  { keys: '4.5', decimals: 2, entry: '4.5' },
  { keys: '.05', decimals: 2, entry: '0.05' },
  { keys: '0.057', decimals: 2, entry: '0.05' },
  { keys: '1.2.3', decimals: 2, entry: '1.23' },
  { keys: '05', decimals: 1, entry: '5' },
  { keys: '15<6', decimals: 0, entry: '16' },
  { keys: '<<7', decimals: 0, entry: '7' },
  { keys: '1234567', decimals: 0, entry: '12345' },
  { keys: '4a', decimals: 0, entry: '4' },
])('the keys $keys with $decimals decimals are $entry', ({ keys, decimals, entry }) => {
  expect(keyed(keys, decimals)).toBe(entry);
});

test.each([
  ['', false],
  ['4.', false],
  ['4', true],
  ['4.5', true],
])('%s is a number that can be sent: %s', (entry, whole) => {
  expect(isWhole(entry)).toBe(whole);
});
