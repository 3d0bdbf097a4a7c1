import { describe, expect, test } from 'vitest';
import { decodeWav, encodeWav, soundMs } from '../../../src/voice/flite/wav';

const bytes = (text: string) => [...text].map((character) => character.charCodeAt(0));

// Laid out by hand after "Multimedia Programming Interface and Data Specifications 1.0" (IBM and Microsoft, 1991):
// little-endian chunks, an odd one padded to an even length.
const FORMAT = [...bytes('fmt '), 16, 0, 0, 0, 1, 0, 1, 0, 0x80, 0x3e, 0, 0, 0, 0x7d, 0, 0, 2, 0, 16, 0];
const ODD_NOTE = [...bytes('note'), 3, 0, 0, 0, 1, 2, 3, 0];
const DATA = [...bytes('data'), 6, 0, 0, 0, 0x00, 0x40, 0x00, 0x80, 0x00, 0x00];

function file(...chunks: readonly number[][]): Uint8Array {
  return Uint8Array.from([...bytes('RIFF'), 0, 0, 0, 0, ...bytes('WAVE'), ...chunks.flat()]);
}

test.each([
  { why: 'plain', wav: file(FORMAT, DATA) },
  { why: 'with a padded chunk before the sound', wav: file(FORMAT, ODD_NOTE, DATA) },
  { why: 'with more after it', wav: file(FORMAT, DATA, ODD_NOTE) },
])('reads a file that is $why', ({ wav }) => {
  const sound = decodeWav(wav);
  expect(sound).toEqual({ ok: true, value: { rateHz: 16000, samples: Float32Array.of(0.5, -1, 0) } });
});

test('a file cut short is read as far as it goes', () => {
  const sound = decodeWav(file(FORMAT, DATA).slice(0, -3));
  expect(sound).toMatchObject({ ok: true, value: { samples: Float32Array.of(0.5) } });
});

describe('what is not speech is refused', () => {
  const stereo = FORMAT.with(10, 2);
  test.each([
    { what: 'nothing', wav: new Uint8Array(), code: 'not-a-wav' },
    { what: 'a web page', wav: Uint8Array.from(bytes('<!doctype html>')), code: 'not-a-wav' },
    { what: 'a header alone', wav: file(FORMAT), code: 'not-a-wav' },
    { what: 'sound before its format', wav: file(DATA, FORMAT), code: 'not-a-wav' },
    { what: 'stereo', wav: file(stereo, DATA), code: 'not-mono-16-bit' },
  ])('$what', ({ wav, code }) => {
    expect(decodeWav(wav)).toMatchObject({ ok: false, error: { code } });
  });
});

test('what is encoded is decoded again to within a step of 16 bits, and clipped beyond', () => {
  const samples = Float32Array.of(0, 0.25, -0.25, 1, -1, 1.5, -1.5);
  const decoded = decodeWav(encodeWav({ samples, rateHz: 22050 }));
  if (!decoded.ok) throw new Error(decoded.error.code);
  expect(decoded.value.rateHz).toBe(22050);
  for (const [i, sample] of decoded.value.samples.entries()) {
    expect(sample).toBeCloseTo(Math.max(-1, Math.min(1, samples[i] ?? 0)), 4);
  }
});

test('length is samples over rate', () => {
  expect(soundMs({ samples: new Float32Array(8000), rateHz: 16000 })).toBe(500);
});
