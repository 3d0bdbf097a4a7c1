import type { VoiceProfile } from '../../src/core/voice-profile/voice-profile';

/** What reading aloud taught about a person, as it is kept. */
export const keptProfile = (id: string, person: string, headset = 'half mask'): VoiceProfile => ({
  version: 1,
  id,
  person,
  headset,
  madeAt: 0,
  model: { folder: 'en-us', checksum: 1 },
  voiceDb: -30,
  noiseDb: -60,
  means: null,
  sureness: 'sure',
});
