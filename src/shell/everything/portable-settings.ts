import { readWrench } from '../../core/fastening/read-wrench';
import type { Wrench } from '../../core/fastening/wrench';
import type { Settings } from '../../ui/setup/settings';
import { DEFAULT_SETTINGS, settingsFrom } from '../setup/settings';

/**
 * What belongs to the person and goes along to another machine. The rest belongs to the machine (its microphones, voices
 * and models, the language it speaks) or is for each machine to be asked anew (whether sound is kept).
 */
const TASTES = ['theme', 'textSize', 'torqueUnit', 'volumeUnit', 'terse', 'speechRate', 'talk'] as const;

type Taste = (typeof TASTES)[number];
export type Portable = Pick<Settings, Taste | 'people' | 'wrenches'>;

export type SettingsTaken = {
  readonly settings: Settings;
  readonly people: number;
  readonly wrenches: number;
  readonly tastes: number;
  /** Places in the file of what is no wrench. */
  readonly broken: readonly string[];
  /** Wrenches of a name that another one has here, which stays. */
  readonly otherWrenches: readonly string[];
  /** Something was chosen here otherwise, and stays. */
  readonly hasOthers: boolean;
};

const LONGEST_NAME = 60;

export const portable = (settings: Settings): Portable => pick(settings, [...TASTES, 'people', 'wrenches']);

/** The settings here with those of a file put to them. Nothing that was chosen here is changed. */
export function withPortable(here: Settings, raw: Readonly<Record<string, unknown>>): SettingsTaken {
  const given = settingsFrom(raw);
  const isUsual = (taste: Taste) => here[taste] === DEFAULT_SETTINGS[taste];
  const asked = TASTES.filter((taste) => given[taste] !== here[taste]);
  const taken = asked.filter(isUsual);
  const names = listed(raw.people).flatMap((name) => (typeof name === 'string' ? [name.trim()] : []));
  const people = [...new Set(names)].filter(
    (name) => name !== '' && name.length <= LONGEST_NAME && !here.people.includes(name),
  );
  const read = listed(raw.wrenches).map(readWrench);
  const brought = read.flatMap((one) => one ?? []);
  const isHere = ({ id, say }: Wrench) => here.wrenches.some((one) => one.id === id || one.say === say);
  const others = brought.filter((one) => isHere(one) && !here.wrenches.some((x) => isSame(x, one)));
  const wrenches = brought.filter((one) => !isHere(one));
  return {
    settings: {
      ...here,
      ...pick(given, taken),
      people: [...here.people, ...people],
      wrenches: [...here.wrenches, ...wrenches],
    },
    people: people.length,
    wrenches: wrenches.length,
    tastes: taken.length,
    broken: read.flatMap((one, index) => (one ? [] : [`/settings/wrenches/${index}`])),
    otherWrenches: others.map(({ say }) => say),
    // What the file has as it comes says nothing.
    hasOthers: asked.some((taste) => !isUsual(taste) && given[taste] !== DEFAULT_SETTINGS[taste]),
  };
}

const listed = (raw: unknown): readonly unknown[] => (Array.isArray(raw) ? raw : []);

const isSame = (one: Wrench, other: Wrench): boolean =>
  JSON.stringify(readWrench(one)) === JSON.stringify(readWrench(other));

function pick<K extends keyof Settings>(settings: Settings, keys: readonly K[]): Pick<Settings, K> {
  // Built key by key: what it has is what was asked for.
  return Object.fromEntries(keys.map((key) => [key, settings[key]])) as Pick<Settings, K>;
}
