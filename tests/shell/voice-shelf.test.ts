import { expect, test } from 'vitest';
import type { VoiceProfile } from '../../src/core/voice-profile/voice-profile';
import { clearShelf, keepProfile, readShelf, removeProfile } from '../../src/shell/voice-shelf';
import { memoryStore } from '../../src/store/memory-store';

const profile = (id: string, person: string, headset = 'half mask'): VoiceProfile => ({
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

const idsOn = async (store: ReturnType<typeof memoryStore>): Promise<readonly string[]> =>
  (await readShelf(store)).profiles.map(({ id }) => id);

test('nothing kept is no profile and no fault', async () => {
  expect(await readShelf(memoryStore())).toEqual({ profiles: [], faults: [] });
});

test('a person has one profile for each headset, the last that was made', async () => {
  const store = memoryStore();
  for (const one of [profile('a', 'Ansel'), profile('b', 'Ansel', 'throat'), profile('c', 'Berta')])
    expect(await keepProfile(store, one)).toBe(true);
  expect(await idsOn(store)).toEqual(['a', 'b', 'c']);
  await keepProfile(store, profile('d', 'Ansel'));
  expect(await idsOn(store)).toEqual(['b', 'c', 'd']);
  await removeProfile(store, 'c');
  expect(await idsOn(store)).toEqual(['b', 'd']);
  await clearShelf(store);
  expect(await idsOn(store)).toEqual([]);
});

test('what cannot be read is told of, hurts nothing beside it, and outlives a new profile', async () => {
  const store = memoryStore();
  await store.saveSetting('voice-profiles', [{ version: 9 }, profile('a', 'Ansel'), 'torn']);
  await keepProfile(store, profile('b', 'Berta'));
  expect(await readShelf(store)).toEqual({
    profiles: [profile('a', 'Ansel'), profile('b', 'Berta')],
    faults: [
      { code: 'newer', version: 9 },
      { code: 'damaged', at: 'version' },
    ],
  });
});

test('a shelf that is no list is an empty one', async () => {
  const store = memoryStore();
  await store.saveSetting('voice-profiles', 'torn');
  expect(await readShelf(store)).toEqual({ profiles: [], faults: [] });
});
