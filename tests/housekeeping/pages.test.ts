import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';

/** What is not of the project itself, or only there after a build or a run. */
const NOT_OURS = /^(?:\.git|node_modules|dist|test-output)$/;

const top = readdirSync('.', { withFileTypes: true }).filter(({ name }) => !NOT_OURS.test(name));
const paths: readonly string[] = top.flatMap((entry) =>
  entry.isDirectory()
    ? [entry.name, ...readdirSync(entry.name, { recursive: true, encoding: 'utf8' }).map((it) => `${entry.name}/${it}`)]
    : [entry.name],
);

/** Where a path on a page may begin: at the root, or as the code map writes it, inside `src` or its screens. */
const BASES = ['', 'src/', 'src/ui/'];
const isRooted = (path: string): boolean => BASES.some((base) => paths.includes(`${base}${path.split('/')[0]}`));

/** `*`, `<language>` and `xx` stand for any name. */
const pattern = (path: string): string =>
  path
    .replace(/\/$/, '')
    .replaceAll('.', '\\.')
    .replaceAll(/\*|<[^>]*>|(?<=\/)xx(?=\/|$)/g, '[^/]+');

/** True where the path is there, with or without its ending; a file's bare name may be in any folder. */
function isThere(path: string): boolean {
  const begin = path.includes('/') ? `^(?:${BASES.join('|')})` : '(?:^|/)';
  const wanted = new RegExp(`${begin}${pattern(path)}(?:\\.tsx?)?$`);
  return paths.some((it) => wanted.test(it));
}

const textOf = (page: string): string => readFileSync(page, 'utf8').replaceAll(/^```[\s\S]*?^```/gm, '');

/** Whatever a page names that can only be a path: code with a slash in it that begins in one of our folders, or a file of code. */
function pathsOn(page: string): readonly string[] {
  const text = textOf(page);
  const inCode = [...text.matchAll(/`([^`]+)`/g)].flatMap(([, code = '']) => code.split(/[\s,()]+/));
  const plain = text.match(/\b(?:tests|src|grammars|procedures)\/[\w.*<>/-]*[\w*>/]/g) ?? [];
  return [...new Set([...inCode, ...plain])].filter(
    (it) => (/^[\w.*<>-]+(?:\/[\w.*<>-]+)+\/?$/.test(it) && isRooted(it)) || /^[\w*-]+\.(?:tsx?|css)$/.test(it),
  );
}

const pages = paths.filter((path) => path.endsWith('.md'));
const named = pages.flatMap((page) => pathsOn(page).map((path) => ({ page, path })));

test('what pages name is found, and a slip in it would be', () => {
  expect(named.length).toBeGreaterThan(80);
  expect(['core/job/no-such-file.ts', 'tests/no-such-folder', 'no-such-name.css'].filter(isThere)).toEqual([]);
});

test('every path a page names is there', () => {
  expect(named.filter(({ path }) => !isThere(path))).toEqual([]);
});

test('every folder of the program is on the map of the code', () => {
  const folders = ['src', 'src/core'].flatMap((folder) =>
    readdirSync(folder, { withFileTypes: true })
      .filter((entry) => entry.isDirectory() && !['core', 'public'].includes(entry.name))
      .map(({ name }) => `${folder}/${name}`.slice('src/'.length)),
  );
  const map = /## Where things are([\s\S]*?)\n## /.exec(readFileSync('DEVELOPERS.md', 'utf8'))?.[1] ?? '';
  expect(folders.length).toBeGreaterThan(15);
  expect(folders.filter((folder) => !map.includes(`\`${folder}\``))).toEqual([]);
});

test('every link of a page leads to something', () => {
  const links = pages.flatMap((page) =>
    [...textOf(page).matchAll(/\]\(([^)#:]+)\)/g)].map(([, to = '']) => join(dirname(page), to)),
  );
  expect(links.length).toBeGreaterThan(5);
  expect(links.filter((to) => !existsSync(to))).toEqual([]);
});

test('every script a page names can be run, and every script is named for those who work on the code', () => {
  const scripts = Object.keys(JSON.parse(readFileSync('package.json', 'utf8')).scripts);
  const run = (text: string) => [...text.matchAll(/npm run ([a-z][\w:-]*)/g)].map(([, name = '']) => name);
  const asked = pages.flatMap((page) => run(readFileSync(page, 'utf8')));
  expect(asked.filter((name) => !scripts.includes(name))).toEqual([]);
  const told = new Set([...run(readFileSync('DEVELOPERS.md', 'utf8')), 'start', 'test']);
  expect(scripts.filter((name) => !told.has(name))).toEqual([]);
});
