import { type LanguageProfile, readProfile } from '../core/language-profile';
import { type Tongue, type TongueFiles, tongueOf } from '../core/tongue';
import type { ScreenWords } from '../ui/words/words';

type Later<T> = Readonly<Record<string, () => Promise<T>>>;

/** The files of a language, put together by the build. */
type Files = Omit<TongueFiles, 'profile'> & { readonly screen: ScreenWords };

// One folder a language; what is in it is fetched only for the one that is chosen. The screen's texts are held to their
// keys and slots by tests/ui: the check itself would be weight that every start carries.
const PROFILES = import.meta.glob<unknown>('../../grammars/*/language.yaml', { eager: true, import: 'default' });
const FILES = import.meta.glob<Files>('../../grammars/*/language.yaml', { query: '?all', import: 'default' });
const LATER = import.meta.glob<object>('../../grammars/*/screen.yaml', { query: '?later', import: 'default' });

const codeOf = (path: string): string => path.split('/').at(-2) ?? '';

const BROKEN = 'language-files-broken';

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

const fileOf = <T>(files: Later<T>, { code }: LanguageProfile, name: string): Promise<T> => {
  const file = files[`../../grammars/${code}/${name}`];
  if (!file) throw new Error(`${BROKEN} ${code} has no ${name}`);
  return file();
};

/** Fetches all of a language that the first paint needs. */
export async function loadLanguage(profile: LanguageProfile): Promise<Language> {
  const { screen, ...files } = await fileOf(FILES, profile, 'language.yaml');
  const tongue = tongueOf({ profile, ...files });
  if (!tongue.ok) throw new Error(`${BROKEN} ${JSON.stringify(tongue.error)}`);
  const rest = async (): Promise<void> => {
    Object.assign(screen, await fileOf(LATER, profile, 'screen.yaml'));
  };
  return { tongue: tongue.value, screen, rest };
}
