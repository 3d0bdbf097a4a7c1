import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

const FOLDER = 'tests/browser/screens';
const SCREENS = ['bench', 'record', 'jobs', 'procedures', 'setup'];
const SIZES = ['800x1280', '1280x800', '1440x900', '390x844'];

const there = readdirSync(FOLDER);
const readme = readFileSync('README.md', 'utf8');
const shown = [...readme.matchAll(/!\[([^\]]*)\]\(([^)]+)\)/g)].map(([, alt = '', path = '']) => ({ alt, path }));

/** Width and height of a PNG, from its header chunk (W3C PNG, 11.2.1). */
function sizeOf(path: string): string {
  const bytes = readFileSync(path);
  return `${bytes.readUInt32BE(16)}x${bytes.readUInt32BE(20)}`;
}

describe('the pictures of the README (npm run pictures)', () => {
  test.each(shown)('$path is there, and is told in words', ({ alt, path }) => {
    expect(there.map((name) => `${FOLDER}/${name}`)).toContain(path);
    expect(alt.length).toBeGreaterThan(10);
  });

  test('show every screen', () => {
    expect(SCREENS.filter((screen) => !shown.some(({ path }) => path.startsWith(`${FOLDER}/${screen}-`)))).toEqual([]);
  });

  test('are kept and named of every screen in every size, each in the size its name says, and no others', () => {
    const wanted = SCREENS.flatMap((screen) => SIZES.map((size) => `${screen}-${size}.png`));
    expect(there.toSorted()).toEqual(wanted.toSorted());
    expect(wanted.filter((name) => !readme.includes(`(${FOLDER}/${name})`))).toEqual([]);
    expect(wanted.map((name) => `${name.slice(0, name.lastIndexOf('-'))}-${sizeOf(`${FOLDER}/${name}`)}.png`)).toEqual(
      wanted,
    );
  });
});
