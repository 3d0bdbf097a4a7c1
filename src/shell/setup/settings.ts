import type { LogStore } from '../../core/log/log-store';
import type { Settings } from '../../ui/setup/settings';

export const DEFAULT_SETTINGS: Settings = {
  language: '',
  theme: 'system',
  textSize: 'usual',
  people: [],
  wrenches: [],
  torqueUnit: 'as-printed',
  volumeUnit: 'as-printed',
  terse: false,
  voice: 'embedded',
  systemVoice: '',
  speechRate: 1,
  microphone: '',
  microphoneName: '',
  talk: 'always',
  recogniser: 'embedded',
  keepHeard: false,
  voiceProfile: '',
};

const KEY = 'settings';

/** What a setting may be, where its kind alone does not say it. */
const CHOICES: Readonly<Partial<Record<keyof Settings, readonly unknown[]>>> = {
  theme: ['system', 'day', 'dim'],
  textSize: ['usual', 'large', 'largest'],
  torqueUnit: ['as-printed', 'N·m', 'lbf·ft', 'lbf·in', 'kgf·m'],
  volumeUnit: ['as-printed', 'L', 'US qt', 'imp qt'],
  voice: ['embedded', 'system', 'silent'],
  talk: ['always', 'pedal'],
  recogniser: ['embedded', 'own-model', 'typed'],
};

/** The rates offered; "slower" and "faster" stay inside them. */
const RATES = { least: 0.7, most: 1.3, step: 0.1 };

/** Saved settings over the defaults. Anything that does not look like a setting of its kind is left out. */
export async function readSettings(store: Pick<LogStore, 'setting'>): Promise<Settings> {
  const saved = await store.setting(KEY);
  return settingsFrom(saved.ok ? saved.value : null);
}

/** The same from whatever was found. */
export function settingsFrom(saved: unknown): Settings {
  if (typeof saved !== 'object' || saved === null) return DEFAULT_SETTINGS;
  const given: ReadonlyMap<string, unknown> = new Map(Object.entries(saved));
  const choices: ReadonlyMap<string, readonly unknown[]> = new Map(Object.entries(CHOICES));
  const kept = Object.entries(DEFAULT_SETTINGS).map(([key, usual]) => {
    const value = given.get(key);
    const isOfKind = typeof value === typeof usual && Array.isArray(value) === Array.isArray(usual);
    return [key, isOfKind && (choices.get(key)?.includes(value) ?? true) ? value : usual];
  });
  return { ...DEFAULT_SETTINGS, ...Object.fromEntries(kept) };
}

export const saveSettings = (store: Pick<LogStore, 'saveSetting'>, settings: Settings) =>
  store.saveSetting(KEY, settings);

/** The speed one step slower or faster, in the tenths that Setup shows. */
export function rateStepped(rate: number, steps: number): number {
  const wanted = Math.round((rate + steps * RATES.step) * 10) / 10;
  return Math.min(RATES.most, Math.max(RATES.least, wanted));
}

/** Whoever chooses the machine's own voice gets the first one it has, until another of them is chosen. */
export function withVoice(settings: Settings, voices: readonly { readonly uri: string }[]): Settings {
  const [first] = voices;
  const isThere = voices.some(({ uri }) => uri === settings.systemVoice);
  return settings.voice !== 'system' || isThere || !first ? settings : { ...settings, systemVoice: first.uri };
}
