import { describe, expect, test } from 'vitest';
import { readSoundsFile } from '../../../../src/cli/tongue-files';
import { phoneDistance } from '../../../../src/core/language/sounds/phone-distance';
import type { Phone } from '../../../../src/core/language/sounds/sounds';

const sounds = readSoundsFile('en');
const { between } = phoneDistance(sounds);

describe('a distance', () => {
  test('is nothing from a phone to itself, the same both ways, and never above one', () => {
    for (const a of sounds.phones)
      for (const b of sounds.phones) {
        const distance = between(a, b);
        expect([a, b, between(b, a)]).toEqual([a, b, distance]);
        expect(distance).toBeLessThanOrEqual(1);
        expect(distance > 0).toBe(a !== b);
      }
  });
});

describe('what noise and low-pass filtering leave apart, and what they do not', () => {
  const nicely = 'Miller and Nicely 1955, abstract: place severely affected, voicing and nasality little';
  test.each<readonly [near: readonly [Phone, Phone], far: readonly [Phone, Phone], source: string]>([
    [['P', 'T'], ['P', 'B'], nicely],
    [['T', 'K'], ['T', 'D'], nicely],
    [['M', 'N'], ['M', 'B'], nicely],
    [['B', 'D'], ['B', 'M'], nicely],
    [['F', 'TH'], ['F', 'V'], nicely],
    [['S', 'F'], ['S', 'Z'], nicely],
    [['IH', 'IY'], ['IH', 'AA'], 'Peterson and Barney 1952, table of formants'],
    [['AA', 'AO'], ['AA', 'IY'], 'Peterson and Barney 1952, table of formants'],
    [['UH', 'UW'], ['UH', 'AE'], 'Peterson and Barney 1952, table of formants'],
    [['OW', 'UW'], ['OW', 'AY'], 'Peterson and Barney 1952, ends of the glides'],
    [['R', 'ER'], ['R', 'IY'], 'a glide is a short vowel, common practice'],
  ])('%s is nearer than %s (%s)', (near, far) => {
    expect(between(...near)).toBeLessThan(between(...far));
  });
});
