import { describe, expect, test } from 'vitest';
import { readVoiceProfile } from '../../../src/core/voice-profile/read-profile';
import { wordsOfLine } from '../../../src/core/voice-profile/reading-aloud';
import type { VoiceProfile } from '../../../src/core/voice-profile/voice-profile';

const row = (at: number): number[] => Array.from({ length: 13 }, (_, n) => (n === at ? 1 : 0));

const PROFILE: VoiceProfile = {
  version: 1,
  id: 'p1',
  person: 'Ansel',
  headset: 'half mask',
  madeAt: 1_700_000_000_000,
  model: { folder: 'en-us', checksum: 498_192_159 },
  voiceDb: -31,
  noiseDb: -62,
  means: { turn: Array.from({ length: 13 }, (_, n) => row(n)), shift: row(0) },
  sureness: 'sure',
};

describe('a stored voice profile', () => {
  test.each([
    { what: 'one with a transform', profile: PROFILE },
    { what: 'one that changes nothing', profile: { ...PROFILE, means: null } },
  ])('is read as it was written: $what', ({ profile }) => {
    expect(readVoiceProfile(structuredClone(profile))).toEqual({ ok: true, value: profile });
  });

  const broken: readonly { readonly at: string; readonly raw: unknown }[] = [
    { at: 'version', raw: null },
    { at: 'version', raw: { ...PROFILE, version: '1' } },
    { at: 'id', raw: { ...PROFILE, id: '' } },
    { at: 'person', raw: { ...PROFILE, person: 7 } },
    { at: 'model.folder', raw: { ...PROFILE, model: 'en-us' } },
    { at: 'model.checksum', raw: { ...PROFILE, model: { folder: 'en-us', checksum: -1 } } },
    { at: 'voiceDb', raw: { ...PROFILE, voiceDb: 12 } },
    { at: 'noiseDb', raw: { ...PROFILE, noiseDb: Number.NaN } },
    { at: 'sureness', raw: { ...PROFILE, sureness: 'very' } },
    { at: 'means', raw: { ...PROFILE, means: undefined } },
    { at: 'means', raw: { ...PROFILE, means: { turn: [], shift: row(0) } } },
    { at: 'means', raw: { ...PROFILE, means: { turn: PROFILE.means?.turn, shift: row(0).slice(1) } } },
    { at: 'means', raw: { ...PROFILE, means: { turn: PROFILE.means?.turn, shift: [...row(0).slice(1), 1e9] } } },
    { at: 'means', raw: { ...PROFILE, means: { turn: Array.from({ length: 13 }, () => row(20)), shift: row(0) } } },
  ];
  test.each(broken)('is damaged at $at, and nothing is thrown', ({ at, raw }) => {
    expect(readVoiceProfile(raw)).toEqual({ ok: false, error: { code: 'damaged', at } });
  });

  test('of a later program is told from a damaged one', () => {
    const later = { version: 2, id: 'p1', ways: 'not known yet' };
    expect(readVoiceProfile(later)).toEqual({ ok: false, error: { code: 'newer', version: 2 } });
  });
});

test('a line is the words in it', () => {
  expect(wordsOfLine("Wipe both faces. They must be dry, bare and clean; don't hurry.")).toEqual(
    "wipe both faces they must be dry bare and clean don't hurry".split(' '),
  );
  expect(wordsOfLine("Serrer la plaque dans l'étau.")).toEqual(['serrer', 'la', 'plaque', 'dans', "l'étau"]);
});
