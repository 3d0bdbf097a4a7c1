import type { LogStore } from '../core/log/log-store';
import type { Settings } from '../ui/setup/settings';

export const DEFAULT_SETTINGS: Settings = {
  theme: 'system',
  textSize: 'usual',
  people: [],
  wrenches: [],
  torqueUnit: 'as-printed',
  voice: 'embedded',
  systemVoice: '',
  speechRate: 1,
  talk: 'always',
  recogniser: 'embedded',
  keepClips: false,
};

/** Saved settings over the defaults. Anything that does not look like a setting of its kind is left out. */
export async function readSettings(store: LogStore): Promise<Settings> {
  const saved = await store.setting('settings');
  if (!saved.ok || typeof saved.value !== 'object' || saved.value === null) return DEFAULT_SETTINGS;
  const given: ReadonlyMap<string, unknown> = new Map(Object.entries(saved.value));
  const kept = Object.entries(DEFAULT_SETTINGS).map(([key, usual]) => {
    const value = given.get(key);
    return [key, typeof value === typeof usual && Array.isArray(value) === Array.isArray(usual) ? value : usual];
  });
  return { ...DEFAULT_SETTINGS, ...Object.fromEntries(kept) };
}
