import { type LanguageProfile, readProfile } from '../core/language-profile';
import { type Tongue, tongueOf } from '../core/tongue';
import type { ScreenWords } from '../ui/words/words';

type Later<T> = Readonly<Record<string, () => Promise<T>>>;

// One folder a language; what is in them is fetched only for the one that is chosen.
const PROFILES = import.meta.glob<unknown>('../../grammars/*/language.yaml', { eager: true, import: 'default' });
const COMMANDS = import.meta.glob<string>('../../grammars/*/commands.jsgf', { query: '?raw', import: 'default' });
const NUMBERS = import.meta.glob<string>('../../grammars/*/numbers.jsgf', { query: '?raw', import: 'default' });
const LEXICON = import.meta.glob<string>('../../grammars/*/lexicon.txt', { query: '?raw', import: 'default' });
const SOUNDS = import.meta.glob<unknown>('../../grammars/*/sounds.yaml', { import: 'default' });
const REPLIES = import.meta.glob<unknown>('../../grammars/*/replies.yaml', { import: 'default' });
const FIRST = import.meta.glob<unknown>('../../grammars/*/screen.yaml', { query: '?first', import: 'default' });
const LATER = import.meta.glob<object>('../../grammars/*/screen.yaml', { query: '?later', import: 'default' });

const codeOf = (path: string): string => path.split('/').at(-2) ?? '';

const BROKEN = 'the language files are broken:';

/** Every language of the program. Their files are checked by the tests, so a broken one is a bug. */
export const LANGUAGES: readonly LanguageProfile[] = Object.entries(PROFILES).map(([path, raw]) => {
  const profile = readProfile(codeOf(path), raw);
  if (!profile.ok) throw new Error(`${BROKEN} ${path} ${JSON.stringify(profile.error)}`);
  return profile.value;
});

/** The language chosen in Setup; where none is, the first that the browser's owner reads, and else the first there is. */
export function languageFor(chosen: string, preferred: readonly string[]): LanguageProfile {
  const wanted = [chosen, ...preferred.map((tag) => tag.split('-')[0] ?? '')];
  const found = wanted.flatMap((code) => LANGUAGES.filter((language) => language.code === code));
  const [language] = [...found, ...LANGUAGES];
  if (!language) throw new Error(`${BROKEN} there is none`);
  return language;
}

export type Language = {
  readonly tongue: Tongue;
  /** Those of the first screen and the Bench; the others join them with `rest`. */
  readonly screen: ScreenWords;
  readonly rest: () => Promise<void>;
};

/** Fetches all of a language that the first paint needs. */
export async function loadLanguage(profile: LanguageProfile): Promise<Language> {
  const of = <T>(files: Later<T>, name: string): Promise<T> => {
    const file = files[`../../grammars/${profile.code}/${name}`];
    if (!file) throw new Error(`${BROKEN} ${profile.code} has no ${name}`);
    return file();
  };
  const [commands, numbers, lexicon, sounds, replies, screen] = await Promise.all([
    of(COMMANDS, 'commands.jsgf'),
    of(NUMBERS, 'numbers.jsgf'),
    of(LEXICON, 'lexicon.txt'),
    of(SOUNDS, 'sounds.yaml'),
    of(REPLIES, 'replies.yaml'),
    of(FIRST, 'screen.yaml'),
  ]);
  const tongue = tongueOf({ profile, commands, numbers, lexicon, sounds, replies });
  if (!tongue.ok) throw new Error(`${BROKEN} ${JSON.stringify(tongue.error)}`);
  // Held to its keys and slots by tests/ui: the check itself would be weight that every start carries.
  const words = screen as ScreenWords;
  const rest = async (): Promise<void> => {
    Object.assign(words, await of(LATER, 'screen.yaml'));
  };
  return { tongue: tongue.value, screen: words, rest };
}
