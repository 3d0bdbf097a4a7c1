import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { languages, readTongue } from '../../src/cli/tongue-files';
import { isUnitName } from '../../src/core/fastening/unit';
import { samples } from '../../src/core/language/sample';
import { everyLanguage } from '../grammars/language';
import { type CodeText, readsDetail, textsIn } from './texts-in-code';

/** Code that may name a language, and why. One that no longer does is found too. */
const MAY_NAME: ReadonlyMap<string, string> = new Map([
  ['cli/licences/table.ts', 'what others have made is called as they call it'],
  ['cli/bench/corpus.ts', 'the recordings of people that it measures with are in one language'],
]);

/** The measuring with recordings of people says what they say. */
const RECORDED = /^cli\/bench\//;

const files = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter((name) => /\.tsx?$/.test(name));

/** Codes, tags, models and names of the languages there are: "en", "en-GB", "en-us", "English". */
const NAMES = languages().map((code) => {
  const { name, model } = readTongue(code).profile;
  return new RegExp(`^${code}$|^${code}[-_][a-zA-Z]{2}$|\\b${model}\\b|\\b${name}\\b`, 'u');
});
const namesLanguage = (file: string, code: string): boolean =>
  textsIn(file, code).some(({ text }) => NAMES.some((name) => name.test(text)));

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
 * The command line is for those who write procedures, grammars or code, and so are the parts of the build: both speak
 * English, as DEVELOPERS.md decides. What is found wrong with a document is in its own language there too.
 */
const FOR_AUTHORS = /^(cli\/|vite-|[a-z]+\/vite-)/;

/**
 * The adapters: what went wrong with a machine or a browser is told by its code. A `detail` besides is for whoever looks
 * into it, begins small, and is shown nowhere, which a test below looks at.
 */
const ADAPTERS = /^(speech|store|voice|offline)\//;

/** What looks like words and is none, by file, and why. One that is no longer there is found too. */
const NO_WORDS: ReadonlyMap<string, readonly [why: string, texts: readonly (string | RegExp)[]]> = new Map([
  ['core/card/card-html.ts', ['a style sheet', [/@page \{/]]],
  ['core/fastening/long-torque.ts', ['letters of formulas', ['Dkm', 'Rp']]],
  ['core/fastening/strength.ts', ['letters of formulas', ['As', 'Sp']]],
  ['core/fastening/turn-of-nut.ts', ['a citation', ['RCSC Specification, table 8.2']]],
  ['core/fastening/unit-spelling.ts', ['symbols of units as manuals print them', [/^["°%/\d\p{Ll} ]+$/u]]],
  ['core/fastening/working.ts', ['citations, as their publishers print them', [/^US Army TM /, 'ISO 898-1; SAE J429']]],
  ['core/language/jsgf/print-jsgf.ts', ['the notation of grammars', ['grammar {};']]],
  ['core/language/lower-jsgf.ts', ['the notation of grammars', ['grammar live;']]],
  ['core/measuring/compression.ts', ['a citation', [/^US Army TM /]]],
  ['core/measuring/coolant-table.ts', ['a citation', [/^Lange's Handbook of Chemistry, /]]],
  ['core/phrasing/amounts.ts', ['a pattern of the symbols of units', [/\(\?:ft\|in/]]],
  ['speech/microphone.ts', ['what browsers call their errors', [/^[A-Z][A-Za-z]+Error$/]]],
  ['speech/vosk/tar.ts', ['letters of the tape archive format', ['Lxg']]],
  ['store/connection.ts', ['what browsers call their errors', [/^[A-Z][A-Za-z]+Error$/]]],
  [
    'ui/keyboard.ts',
    ['what browsers call keys', [/^(Arrow(Left|Right)|Page(Down|Up)|Home|End|Enter|Escape|Backspace)$/]],
  ],
  ['ui/use-keys.ts', ['the names of elements', ['input, textarea, select', 'button, a, summary']]],
  ['voice/flite/wav.ts', ['the head of a sound file', ['RIFF    WAVEfmt ']]],
]);

const isNoWord = (file: string, text: string): boolean =>
  (NO_WORDS.get(file)?.[1] ?? []).some((known) => (typeof known === 'string' ? known === text : known.test(text)));

/** What the notation of a formula leaves when its letters, and its words in braces, are taken out. */
const isFormula = (text: string): boolean =>
  / = /.test(text) && !/\p{L}{4,}/u.test(text.replaceAll(/\{[a-z-]*\}/g, '')) && !/ \p{L}+ \p{L}/u.test(text);

/** Tags of HTML and SVG with what stands in them, classes of elements and keys of rows are no words. */
const isMarkup = ({ text, under }: CodeText): boolean =>
  /^(class|transform|key)$/.test(under) || !/\p{L}/u.test(text.replaceAll(/<[^>]*>| [a-z-]+="[^"]*"|\{\}/g, ''));

const SENTENCE = /^\W*\p{Lu}\p{Ll}+/u;
const WORDS = /\p{L}{2,}[^\p{L}<>]* [^\p{L}<>]*(\p{L}{2,}|\{\})|\{\}[^\p{L}<>]* \p{L}{2,}/u;

/**
 * Whether a person could meet this as words: anything between tags; two words or more, of which one may be a value put in;
 * or one that begins like a sentence.
 */
function speaks(file: string, found: CodeText): boolean {
  const { text, under, isShown } = found;
  if (isNoWord(file, text) || isUnitName(text) || isFormula(text) || isMarkup(found)) return false;
  if (isShown && /\p{L}/u.test(text)) return true;
  if (ADAPTERS.test(file) || under === 'detail') return SENTENCE.test(text);
  return SENTENCE.test(text) || WORDS.test(text);
}

const spoken = (file: string, code: string): readonly string[] =>
  textsIn(file, code)
    .filter((found) => speaks(file, found))
    .map(({ text, line }) => `${line}: ${text}`);

const read = (file: string): string => readFileSync(join('src', file), 'utf8');

describe('no language is named in code', () => {
  const found = files.filter((file) => namesLanguage(file, read(file)));

  test('but where it may be', () => {
    expect(found.toSorted()).toEqual([...MAY_NAME.keys()].toSorted());
  });

  test.each([
    `const tongue = readTongue('en');`,
    `utterance.lang = "fr-FR";`,
    `new Intl.DateTimeFormat('en-GB', {})`,
    "const FOLDER = '/model/en-us/';",
    `const x = <p>English</p>`,
  ])('and the test would find %s', (code) => expect(namesLanguage('x.tsx', code)).toBe(true));

  test.each([`// 'en' is only a remark`, `const when = 'end';`, `import x from './en-route';`])('but not %s', (code) =>
    expect(namesLanguage('x.ts', code)).toBe(false),
  );
});

describe('no words of a language are in code', () => {
  test.each(files.filter((file) => !FOR_AUTHORS.test(file)))('%s', (file) => {
    expect(spoken(file, read(file))).toEqual([]);
  });

  test.each(files.filter((file) => !RECORDED.test(file)))('%s says nothing that is said or shown in a job', (file) => {
    expect(textsIn(file, read(file)).filter(({ text }) => isSpoken(text))).toEqual([]);
  });

  test.each(
    [...NO_WORDS].flatMap(([file, [why, texts]]) => texts.map((text) => [file, String(text), why, text] as const)),
  )('%s has %s, %s', (file, _name, _why, text) => {
    const there = textsIn(file, read(file)).map((one) => one.text);
    expect(there.some((one) => (typeof text === 'string' ? one === text : text.test(one)))).toBe(true);
  });

  test.each([
    ['core/view/x.ts', `const next = "what is next";`],
    ['core/sums/x.ts', `reply('x', { source: text('common practice') })`],
    ['core/sums/x.ts', `const f = 'left over = most found − least';`],
    ['core/procedure/x.ts', `report.error(code, at, given, \`There is no step "\${id}".\`)`],
    ['core/language/x.ts', `const mend = { text: 'Stop' };`],
    ['shell/x.ts', `button('Terminer ce travail')`],
    ['shell/x.ts', `notices.trouble('file', busy ? 'écriture en cours' : '')`],
    ['shell/x.ts', `const said = \`\${count} bolts\`;`],
    ['ui/x.tsx', `const x = <p>Carry on with the job</p>`],
    ['ui/x.tsx', `const x = <p>{late ? 'late' : name}</p>`],
    ['ui/x.tsx', `const x = <img alt="casting" />`],
    ['ui/x.tsx', 'const x = <p class="note">{count} bolts</p>'],
    ['store/x.ts', `fail({ code: 'full', detail: 'The store is full.' })`],
    ['main.tsx', `document.title = 'Torque and turn'`],
  ])('the test would find, in %s, %s', (file, code) => expect(spoken(file, code)).toHaveLength(1));

  test.each([
    ['core/view/x.ts', `// What is next\nconst next = 'next-bolt';`],
    ['core/fastening/x.ts', `const f = 'F = 0.9 · Rp · A0 / √(1 + 3 · k²), k = {share} · μ';`],
    ['shell/x.ts', `throw new Error(\`there is no \${thing} here\`)`],
    ['ui/x.tsx', `const x = <p class="note quiet" aria-hidden="true">{w('next')}</p>`],
    ['store/x.ts', `fail({ code: 'full', detail: 'the store has been closed' })`],
  ])('but not, in %s, %s', (file, code) => expect(spoken(file, code)).toEqual([]));
});

describe('what went wrong is shown by its code', () => {
  const shows = files.filter((file) => /^(ui|shell|machine|core|main)/.test(file));

  test('and the detail of an adapter nowhere', () => {
    expect(shows.filter((file) => readsDetail(file, read(file)))).toEqual([]);
  });

  test.each(['say(fault.detail)', 'const { code, detail } = fault;'])('and the test would find %s', (code) => {
    expect(readsDetail('x.ts', code)).toBe(true);
  });
});

describe('the page speaks no language before its script does', () => {
  test.each(['index.html', 'vosk.html'])('%s', (page) => {
    const html = read(page).replaceAll(/<!--[\s\S]*?-->/g, '');
    expect(html.replaceAll(/<[^>]*>/g, ' ').trim()).toBe('Wrenchside');
    expect(html).not.toMatch(/\b(lang|title|alt|aria-label)=|name="description"/);
  });

  test('nor does what an app is installed from', () => {
    const { name, short_name, ...rest } = JSON.parse(read('public/manifest.webmanifest'));
    expect([name, short_name]).toEqual(['Wrenchside', 'Wrenchside']);
    expect(Object.keys(rest).filter((key) => /description|lang|shortcuts/.test(key))).toEqual([]);
  });

  test.each(every.map(({ code }) => code))('and where scripts are off, it says so in %s', (code) => {
    const page: unknown = parse(readFileSync(`grammars/${code}/page.yaml`, 'utf8'));
    expect(page).toEqual({ 'no-script': expect.stringMatching(/^\p{Lu}.*\.$/u) });
  });
});
