import { expect, test } from 'vitest';
import { clearShelf, keepProfile, readShelf, removeProfile } from '../../src/shell/setup/voice-shelf';
import { memoryStore } from '../../src/store/memory-store';
import { keptProfile } from './kept-profile';

const idsOn = async (store: ReturnType<typeof memoryStore>): Promise<readonly string[]> =>
  (await readShelf(store)).profiles.map(({ id }) => id);

test('nothing kept is no profile and no fault', async () => {
  expect(await readShelf(memoryStore())).toEqual({ profiles: [], faults: [] });
});

test('a person has one profile for each headset, the last that was made', async () => {
  const store = memoryStore();
  for (const one of [keptProfile('a', 'Ansel'), keptProfile('b', 'Ansel', 'throat'), keptProfile('c', 'Berta')])
    expect(await keepProfile(store, one)).toBe(true);
  expect(await idsOn(store)).toEqual(['a', 'b', 'c']);
  await keepProfile(store, keptProfile('d', 'Ansel'));
  expect(await idsOn(store)).toEqual(['b', 'c', 'd']);
  await removeProfile(store, 'c');
  expect(await idsOn(store)).toEqual(['b', 'd']);
  await clearShelf(store);
  expect(await idsOn(store)).toEqual([]);
});

test('what cannot be read is told of, hurts nothing beside it, and outlives a new profile', async () => {
  const store = memoryStore();
  await store.saveSetting('voice-profiles', [{ version: 9 }, keptProfile('a', 'Ansel'), 'torn']);
  await keepProfile(store, keptProfile('b', 'Berta'));
  expect(await readShelf(store)).toEqual({
    profiles: [keptProfile('a', 'Ansel'), keptProfile('b', 'Berta')],
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
