import { beforeAll, describe, expect, test } from 'vitest';
import { fliteForNode } from '../../../src/cli/flite-host';
import type { Flite, Rendering, Utterance } from '../../../src/voice/flite/flite';
import { SPEAKERS } from '../../../src/voice/flite/speakers';
import { decodeWav } from '../../../src/voice/flite/wav';

const ORDER = 'Bolt seven. Forty newton metres, in three swings.';

let flite: Flite;
beforeAll(async () => {
  flite = await fliteForNode();
});

function rendered(utterance: Partial<Utterance>): Rendering {
  const result = flite.render({ text: ORDER, speaker: 'slt', rate: 1, ...utterance });
  if (!result.ok) throw new Error(result.error.detail);
  return result.value;
}

function soundOf(utterance: Partial<Utterance>) {
  const decoded = decodeWav(rendered(utterance).wav);
  if (!decoded.ok) throw new Error(decoded.error.detail);
  return decoded.value;
}

const rms = (samples: Float32Array) => Math.sqrt(samples.reduce((sum, x) => sum + x * x, 0) / samples.length);
const peak = (samples: Float32Array) => samples.reduce((most, x) => Math.max(most, Math.abs(x)), 0);

describe('every speaker', () => {
  test.each(SPEAKERS)('%s says the sentence audibly, at 16 kHz, in the time a person would take', (speaker) => {
    const { samples, rateHz } = soundOf({ speaker });
    expect(rateHz).toBe(16000);
    // Nine words; conversational English runs at about 120 to 200 words a minute (common practice), so 2.7 to 4.5 s,
    // with room for the pauses at the stops.
    expect(samples.length / rateHz).toBeGreaterThan(2.2);
    expect(samples.length / rateHz).toBeLessThan(5.5);
    expect(rms(samples)).toBeGreaterThan(0.02);
    expect(peak(samples)).toBeLessThan(1);
  });
});

test('the same words give the same sound every time', () => {
  expect(rendered({}).wav).toEqual(rendered({}).wav);
});

test('speakers differ from each other', () => {
  const lengths = SPEAKERS.map((speaker) => rendered({ speaker }).wav.length);
  expect(new Set(lengths).size).toBe(SPEAKERS.length);
});

describe('pace', () => {
  test.each([
    { rate: 0.8, least: 1.15, most: 1.35 },
    { rate: 1.25, least: 0.75, most: 0.85 },
  ])('at rate $rate the sentence takes between $least and $most of its time', ({ rate, least, most }) => {
    const share = rendered({ rate }).ms / rendered({ rate: 1 }).ms;
    expect(share).toBeGreaterThan(least);
    expect(share).toBeLessThan(most);
  });

  test.each([
    { given: 0.01, same: 0.5 },
    { given: 99, same: 2 },
    { given: Number.NaN, same: 1 },
  ])('a rate of $given is taken as $same', ({ given, same }) => {
    expect(rendered({ rate: given }).ms).toBe(rendered({ rate: same }).ms);
  });
});

test('pitch can be moved for a test speaker without moving the pace', () => {
  const low = rendered({ features: { int_f0_target_mean: 120 } });
  const high = rendered({ features: { int_f0_target_mean: 220 } });
  expect(low.wav).not.toEqual(high.wav);
  expect(low.ms / high.ms).toBeCloseTo(1, 2);
});

describe('text that is not plain words', () => {
  test.each(['', '...'])('%j is refused, not spoken as silence', (text) => {
    expect(flite.render({ text, speaker: 'slt', rate: 1 })).toMatchObject({
      ok: false,
      error: { code: 'nothing-to-say' },
    });
  });

  test.each(['--help', '-o /elsewhere bolt', '-lv', '-voice kal bolt', '/etc/hosts'])(
    '%j is spoken, not taken as an option or a file',
    (text) => {
      expect(rms(soundOf({ text }).samples)).toBeGreaterThan(0.02);
    },
  );
});
