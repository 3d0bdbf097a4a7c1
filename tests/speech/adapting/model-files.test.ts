import { describe, expect, test } from 'vitest';
import { readAcoustics } from '../../../src/speech/ear/adapting/acoustics';
import { readGaussians, withFigures } from '../../../src/speech/ear/adapting/means-file';
import { acousticsOf, modelFile } from './model';

// Counts from the models' own headers; a phone more or less would shift every figure to another sound.
describe.each([
  { folder: 'en-us', codebooks: 42, units: 5126, some: ['AA', 'SIL', 'ZH'] },
  { folder: 'fr-fr', codebooks: 36, units: 2108, some: ['SIL', 'aa', 'zz'] },
])('the acoustic model $folder', ({ folder, codebooks, units, some }) => {
  test('is read whole: phones, figures and weights', async () => {
    const { phones, streams, densities, width, means, variances, logWeight } = await acousticsOf(folder);
    expect({ phones: phones.length, streams, densities, width }).toEqual({
      phones: codebooks,
      streams: 3,
      densities: 128,
      width: 13,
    });
    expect(phones).toEqual(expect.arrayContaining(some));
    expect(means).toHaveLength(variances.length);
    expect(variances.every((value) => value > 0)).toBe(true);
    // The weights of a sound unit in a stream add up to one, as near as one byte each can say.
    for (const unit of [0, units - 1]) {
      const sum = Array.from({ length: densities }, (_, n) => Math.exp(logWeight(0, n, unit))).reduce((a, b) => a + b);
      expect(sum).toBeGreaterThan(0.85);
      expect(sum).toBeLessThan(1.15);
    }
  });

  test('is written as it was read, checksum and all', async () => {
    const bytes = await modelFile(folder)('means');
    const read = readGaussians(bytes);
    if (!read.ok) throw new Error(read.error);
    // Compared as bytes: a mismatch in millions of figures need not be printed.
    expect(Buffer.compare(withFigures(bytes, read.value, read.value.values), bytes)).toBe(0);
  });
});

test.each(['means', 'variances', 'sendump'])('a damaged %s is refused by name, and nothing is thrown', async (name) => {
  const whole = modelFile('en-us');
  const read = await readAcoustics(async (asked) => {
    const bytes = await whole(asked);
    return asked === name ? bytes.subarray(0, bytes.length - 40) : bytes;
  });
  expect(read).toMatchObject({ ok: false, error: expect.stringContaining(name) });
});
