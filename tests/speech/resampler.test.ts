import { describe, expect, test } from 'vitest';
import { Resampler } from '../../src/speech/ear/resampler';

const sine = (hz: number, rate: number, seconds = 1): Float32Array =>
  Float32Array.from({ length: rate * seconds }, (_, n) => Math.sin((2 * Math.PI * hz * n) / rate));

/** Amplitude of one frequency by correlation, away from the ends. */
function amplitude(samples: Float32Array, hz: number, rate: number): number {
  const from = Math.round(rate * 0.2);
  const to = from + Math.round(rate * 0.5);
  let real = 0;
  let imaginary = 0;
  for (let n = from; n < to; n += 1) {
    real += (samples[n] ?? 0) * Math.cos((2 * Math.PI * hz * n) / rate);
    imaginary += (samples[n] ?? 0) * Math.sin((2 * Math.PI * hz * n) / rate);
  }
  return (2 * Math.hypot(real, imaginary)) / (to - from);
}

const rms = (samples: Float32Array): number =>
  Math.sqrt(samples.slice(2000, 10_000).reduce((sum, x) => sum + x * x, 0) / 8000);

// 44.1 and 48 kHz are the rates browsers capture at; 8 kHz is a Bluetooth headset in call mode.
describe.each([
  [44_100, 48_000],
  [44_100, 16_000],
  [48_000, 16_000],
  [16_000, 48_000],
  [8_000, 16_000],
])('from %i Hz to %i Hz', (from, to) => {
  test.each([100, 1_000, 3_000])('a tone of %i Hz keeps its height and pitch', (hz) => {
    const out = new Resampler(from, to).push(sine(hz, from));
    expect(amplitude(out, hz, to)).toBeCloseTo(1, 2);
  });

  test('output sample n stands for input time n', () => {
    const out = new Resampler(from, to).push(sine(500, from));
    const wanted = sine(500, to);
    for (let n = 4000; n < 4100; n += 1) expect(out[n]).toBeCloseTo(wanted[n] ?? 0, 2);
  });

  test('blocks of any size give the same samples as one', () => {
    const whole = new Resampler(from, to).push(sine(700, from));
    const resampler = new Resampler(from, to);
    const pieces: number[] = [];
    const input = sine(700, from);
    for (let at = 0, size = 1; at < input.length; at += size, size = (size * 7 + 3) % 997) {
      pieces.push(...resampler.push(input.subarray(at, at + size)));
    }
    expect(pieces.length).toBe(whole.length);
    expect(Math.max(...pieces.map((x, n) => Math.abs(x - (whole[n] ?? 0))))).toBeLessThan(1e-6);
  });
});

test('what the slower side cannot carry is removed by at least 60 dB, not folded back', () => {
  expect(rms(new Resampler(48_000, 16_000).push(sine(12_000, 48_000)))).toBeLessThan(0.001 * Math.SQRT1_2);
});
