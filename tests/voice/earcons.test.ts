import { describe, expect, test } from 'vitest';
import { earconMs, earconSamples } from '../../src/voice/earcons';

const EARCONS = ['heard', 'not-understood', 'pass-complete', 'timer-up', 'saved-not'] as const;

describe.each(EARCONS)('%s', (earcon) => {
  const samples = earconSamples(earcon, 48000);

  test('starts and ends at zero without a jump, and never clips', () => {
    expect(Math.abs(samples.at(0) ?? 1)).toBe(0);
    expect(Math.abs(samples.at(-1) ?? 1)).toBeLessThan(1e-6);
    const steps = samples.map((sample, i) => Math.abs(sample - (samples[i - 1] ?? 0)));
    // The steepest a 1600 Hz tone with its octave at 0.6 can climb between samples at 48 kHz.
    expect(Math.max(...steps)).toBeLessThan(0.6 * ((2 * Math.PI * 1600) / 48000) * 1.4);
    expect(Math.max(...samples.map(Math.abs))).toBeLessThan(0.7);
    expect(Math.max(...samples.map(Math.abs))).toBeGreaterThan(0.4);
  });

  test.each([16000, 44100, 48000])('lasts as long at %i Hz as it says', (rateHz) => {
    expect(earconSamples(earcon, rateHz).length / rateHz).toBeCloseTo(earconMs(earcon) / 1000, 3);
  });
});

test('the heard tick is over before a person could have begun the next word', () => {
  expect(earconMs('heard')).toBeLessThan(120);
});

test('none keeps the ear closed for longer than a second', () => {
  for (const earcon of EARCONS) expect(earconMs(earcon)).toBeLessThan(1000);
});

test('each has a contour of its own: notes, and whether they rise, fall or stay', () => {
  const contours = EARCONS.map((earcon) => contourOf(earconSamples(earcon, 48000), 48000).join(' '));
  expect(new Set(contours).size).toBe(EARCONS.length);
});

/** The pitch of each stretch of sound at its start and end, to the nearest 60 Hz, from the zero crossings. */
function contourOf(samples: Float32Array, rateHz: number): string[] {
  const crossings = [...samples.keys()].filter((i) => i > 0 && (samples[i - 1] ?? 0) <= 0 && (samples[i] ?? 0) > 0);
  const notes: number[][] = [];
  for (const [i, at] of crossings.entries()) {
    const before = crossings[i - 1];
    const pitch = before === undefined ? null : Math.round(rateHz / (at - before) / 60) * 60;
    if (pitch === null || pitch < 300) notes.push([]);
    else notes.at(-1)?.push(pitch);
  }
  return notes.map((pitches) => `${pitches.at(2)}-${pitches.at(-3)}`);
}
