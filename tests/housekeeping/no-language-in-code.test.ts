import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { languages, readTongue } from '../../src/cli/tongue-files';
import { isUnitName } from '../../src/core/fastening/unit';
import { samples } from '../../src/core/language/sample';
import { everyLanguage } from '../grammars/language';

/** Code that may name a language, and why. One that no longer does is found too. */
const MAY_NAME: ReadonlyMap<string, string> = new Map([
  ['cli/licences/table.ts', 'what others have made is called as they call it'],
  ['cli/bench/corpus.ts', 'the recordings of people that it measures with are in one language'],
]);

/** Folders whose texts are for those who write documents, grammars or code, at a terminal or in a list of findings. */
const FOR_AUTHORS = /^(cli|core\/(authoring|procedure|language|phrasing))\//;

/** The measuring with recordings of people says what they say. */
const RECORDED = /^cli\/bench\//;

const files = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter((name) => /\.tsx?$/.test(name));

const withoutComments = (code: string): string => code.replaceAll(/\/\*[\s\S]*?\*\/|(?<![:'"`\w])\/\/.*$/gm, '');

/** The texts in quotes of a piece of code, and those between tags. */
const textsIn = (code: string): readonly string[] => [
  ...[...withoutComments(code).matchAll(/'((?:[^'\\\n]|\\.)*)'|"((?:[^"\\\n]|\\.)*)"|`((?:[^`\\]|\\.)*)`/g)].map(
    ([, single, double, template]) => single ?? double ?? template ?? '',
  ),
  ...[...withoutComments(code).matchAll(/>([^<>{}=;()]+)</g)].map(([, text = '']) => text.trim()),
];

/** Codes, tags, models and names of the languages there are: "en", "en-GB", "en-us", "English". */
const NAMES = languages().map((code) => {
  const { name, model } = readTongue(code).profile;
  return new RegExp(`^${code}$|^${code}[-_][a-zA-Z]{2}$|\\b${model}\\b|\\b${name}\\b`, 'u');
});
const namesLanguage = (code: string): boolean => textsIn(code).some((text) => NAMES.some((name) => name.test(text)));

const every = await everyLanguage();

/** What can be said and is said or shown, two words or more, in any language: the fixed parts of it. */
const SPOKEN: ReadonlySet<string> = new Set(
  every.flatMap(({ code, everything }) => [
    ...samples(everything, 400).map(({ words }) => words),
    ...Object.values(parse(readFileSync(`grammars/${code}/screen.yaml`, 'utf8'))).flatMap((text) =>
      String(text).trim(),
    ),
  ]),
);
const isSpoken = (text: string): boolean => text.includes(' ') && SPOKEN.has(text.trim());

/**
 * Two words or more that begin like a sentence. The names of values in formulas, which begin small, are not seen: those
 * are known to be English, and DEVELOPERS.md says so.
 */
const isSentence = (text: string): boolean => /^\p{Lu}[\p{L}'’]+ \p{Ll}[^\n]*$/u.test(text) && !isUnitName(text);

describe('no language is named in code', () => {
  const found = files.filter((file) => namesLanguage(readFileSync(join('src', file), 'utf8')));

  test('but where it may be', () => {
    expect(found.toSorted()).toEqual([...MAY_NAME.keys()].toSorted());
  });

  test.each([
    `const tongue = readTongue('en');`,
    `utterance.lang = "fr-FR";`,
    `new Intl.DateTimeFormat('en-GB', {})`,
    "const FOLDER = '/model/en-us/';",
    `<p>English</p>`,
  ])('and the test would find %s', (code) => expect(namesLanguage(code)).toBe(true));

  test.each([`// 'en' is only a remark`, `const when = 'end';`, `import x from './en-route';`])('but not %s', (code) =>
    expect(namesLanguage(code)).toBe(false),
  );
});

describe('no words of a language are in code', () => {
  test.each(files.filter((file) => !FOR_AUTHORS.test(file)))('%s', (file) => {
    const texts = textsIn(readFileSync(join('src', file), 'utf8'));
    expect(texts.filter((text) => isSpoken(text) || isSentence(text))).toEqual([]);
  });

  test.each(files.filter((file) => FOR_AUTHORS.test(file) && !RECORDED.test(file)))(
    '%s says nothing that is said or shown in a job',
    (file) => {
      expect(textsIn(readFileSync(join('src', file), 'utf8')).filter(isSpoken)).toEqual([]);
    },
  );

  test.each([
    [`const next = "what's next";`, isSpoken],
    [`button('Terminer ce travail')`, isSentence],
    [`<p>Carry on with the job</p>`, isSentence],
    [`say('quelle est la suite')`, isSpoken],
  ])('and the test would find %s', (code, finds) => expect(textsIn(code).some(finds)).toBe(true));
});
