import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { type CardWords, cardWordsOf } from '../core/card/card-words';
import { readSounds, type Sounds } from '../core/language/sounds/sounds';
import { type LanguageProfile, readProfile } from '../core/language-profile';
import type { Mend } from '../core/mend';
import { type FindingWords, readFindingWords } from '../core/procedure/finding-words';
import { readWording, type Wording } from '../core/procedure/wording';
import { type Tongue, tongueOf } from '../core/tongue';
import { mendWords } from './mend-words';

const grammars = fileURLToPath(new URL('../../grammars/', import.meta.url));

const read = (language: string, name: string): string => readFileSync(`${grammars}${language}/${name}`, 'utf8');

/** The languages there are: the folders under grammars/. */
export const languages = (): readonly string[] =>
  readdirSync(grammars)
    .filter((name) => existsSync(`${grammars}${name}/language.yaml`))
    .sort();

/** A broken file stops the program: its issues are printed whole. */
function readProfileFile(language: string): LanguageProfile {
  if (!languages().includes(language))
    throw new Error(`There is no folder grammars/${language}. There are: ${languages().join(', ')}.`);
  const profile = readProfile(language, parse(read(language, 'language.yaml')));
  if (!profile.ok) throw new Error(`grammars/${language}/language.yaml is broken:\n${linesOf(profile.error)}`);
  return profile.value;
}

/** How the phones of a language sound, for those who look for what sounds alike. */
export function readSoundsFile(language: string): Sounds {
  const sounds = readSounds(parse(read(language, 'sounds.yaml')));
  if (!sounds.ok) throw new Error(`grammars/${language}/sounds.yaml is broken:\n${linesOf(sounds.error)}`);
  return sounds.value;
}

/** What the checker's findings are called in a language. */
export function readFindingsFile(language: string): FindingWords {
  const words = readFindingWords(parse(read(language, 'findings.yaml')));
  if (!words.ok) throw new Error(`grammars/${language}/findings.yaml is broken:\n${linesOf(words.error)}`);
  return words.value;
}

/** What the checker must know of documents in a language. */
export function readWordingFile(language: string): Wording {
  const wording = readWording(parse(read(language, 'wording.yaml')));
  if (!wording.ok) throw new Error(`grammars/${language}/wording.yaml is broken:\n${linesOf(wording.error)}`);
  return wording.value;
}

/** A language read from its folder under grammars/. A broken one stops the program: its issues are printed whole. */
export function readTongue(language: string): Tongue {
  const tongue = tongueOf({
    profile: readProfileFile(language),
    commands: read(language, 'commands.jsgf'),
    numbers: read(language, 'numbers.jsgf'),
    lexicon: read(language, 'lexicon.txt'),
    phones: readSoundsFile(language).phones,
    replies: parse(read(language, 'replies.yaml')),
  });
  if (!tongue.ok) throw new Error(`grammars/${language} is broken:\n${linesOf(tongue.error)}`);
  return tongue.value;
}

/** Each issue as data, its mend in words. */
const linesOf = (issues: readonly unknown[]): string =>
  issues.map((issue) => JSON.stringify(issue, (_key, value) => (isMend(value) ? mendWords(value) : value))).join('\n');

const isMend = (value: unknown): value is Mend => typeof value === 'object' && value !== null && 'how' in value;

/** The words of the job card, from the texts of the screens. */
export const readCardWords = (language: string): CardWords => cardWordsOf(parse(read(language, 'screen.yaml')));

/** How the screens say what stood in a document where something is wrong, with its place for that. */
export const readGivenText = (language: string): string => String(parse(read(language, 'screen.yaml'))['issue-given']);
