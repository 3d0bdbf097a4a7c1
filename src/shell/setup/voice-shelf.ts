import type { LogStore } from '../../core/log/log-store';
import { type ProfileFault, readVoiceProfile } from '../../core/voice-profile/read-profile';
import type { VoiceProfile } from '../../core/voice-profile/voice-profile';

const KEY = 'voice-profiles';

type Store = Pick<LogStore, 'setting' | 'saveSetting'>;

export type Shelf = { readonly profiles: readonly VoiceProfile[]; readonly faults: readonly ProfileFault[] };

/** The profiles that are kept here. Those that cannot be read are counted and left where they are. */
export async function readShelf(store: Store): Promise<Shelf> {
  const read = (await rawShelf(store)).map(readVoiceProfile);
  return {
    profiles: read.flatMap((one) => (one.ok ? [one.value] : [])),
    faults: read.flatMap((one) => (one.ok ? [] : [one.error])),
  };
}

/** Keeps a profile, in the place of the one before for the same person and headset. */
export async function keepProfile(store: Store, profile: VoiceProfile): Promise<boolean> {
  const isSame = (raw: unknown): boolean => {
    const read = readVoiceProfile(raw);
    return read.ok && read.value.person === profile.person && read.value.headset === profile.headset;
  };
  const others = (await rawShelf(store)).filter((raw) => !isSame(raw));
  return (await store.saveSetting(KEY, [...others, profile])).ok;
}

/** Takes one away, and with it whatever could not be read: whoever clears up wants that gone too. */
export async function removeProfile(store: Store, id: string): Promise<void> {
  const { profiles } = await readShelf(store);
  await store.saveSetting(
    KEY,
    profiles.filter((profile) => profile.id !== id),
  );
}

export const clearShelf = async (store: Store): Promise<void> => {
  await store.saveSetting(KEY, []);
};

async function rawShelf(store: Store): Promise<readonly unknown[]> {
  const saved = await store.setting(KEY);
  return saved.ok && Array.isArray(saved.value) ? saved.value : [];
}
