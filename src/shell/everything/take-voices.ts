import type { LogStore } from '../../core/log/log-store';
import { readVoiceProfile } from '../../core/voice-profile/read-profile';
import type { Say } from '../../ui/words/words';
import { keepProfile, readShelf } from '../setup/voice-shelf';
import type { Taken } from './take-procedures';

/** Voices out of a file. One of the same person at the same microphone that is here stays as it is here. */
export async function takeVoices(
  raw: readonly unknown[],
  store: Pick<LogStore, 'setting' | 'saveSetting'>,
  say: Say,
): Promise<Taken> {
  let taken = 0;
  const left: string[] = [];
  for (const [index, one] of raw.entries()) {
    const read = readVoiceProfile(one);
    if (!read.ok) {
      left.push(say('everything-broken', { place: `/voices/${index}` }));
      continue;
    }
    const { id, person, headset, madeAt } = read.value;
    const { profiles } = await readShelf(store);
    const here = profiles.find((x) => x.id === id || (x.person === person && x.headset === headset));
    if (!here && (await keepProfile(store, read.value))) taken += 1;
    else if (!here) left.push(say('storage-failed'));
    else if (here.id !== id || here.madeAt !== madeAt)
      left.push(say('everything-other-voice', { voice: say('profile-name', { person, headset }) }));
  }
  return { taken, left };
}
