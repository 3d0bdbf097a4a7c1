import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { EXIT, main } from '../../src/cli/procedure/check';
import { broken, SOUND } from '../core/procedure/sound-document';

const FRENCH = readFileSync('procedures/plaque-essai.yaml', 'utf8').replace('tool: small-wrench', 'tool: petite');

const FILES: Readonly<Record<string, string>> = {
  'sound.yaml': SOUND,
  'doubtful.yaml': broken('most: 0.05 mm (0.002 in)', 'most: 0.15 mm (0.014 in)'),
  'broken.yaml': broken('tool: bar', 'tool: barr'),
  'cassee.yaml': FRENCH,
};

async function check(...argv: readonly string[]) {
  const printed: string[] = [];
  const complaints: string[] = [];
  const code = await main(argv, {
    readText: async (path) => FILES[path] ?? Promise.reject(new Error('no such file')),
    print: (line) => printed.push(line),
    complain: (line) => complaints.push(line),
  });
  return { code, printed, complaints };
}

test.each([
  ['a sound document', ['sound.yaml'], EXIT.fine],
  ['a document with a warning', ['doubtful.yaml'], EXIT.fine],
  ['a broken document among sound ones', ['sound.yaml', 'broken.yaml'], EXIT.broken],
  ['a file that is not there', ['sound.yaml', 'gone.yaml'], EXIT.misused],
  ['no file at all', [], EXIT.misused],
  ['a switch it does not know', ['--fix', 'sound.yaml'], EXIT.misused],
  ['a call for help', ['--help'], EXIT.fine],
])('%s exits %#', async (_name, argv, code) => {
  expect((await check(...argv)).code).toBe(code);
});

test('a finding is told with file, line, column, code and how to mend it', async () => {
  const { printed, complaints } = await check('broken.yaml');
  const line = SOUND.split('\n').findIndex((text) => text.includes('tool: bar')) + 1;
  expect(complaints[0]).toMatch(
    new RegExp(`^broken\\.yaml:${line}:\\d+ error unknown-tool .*Given: barr\\. Did you mean "bar"`),
  );
  expect(printed.at(-1)).toBe('broken.yaml: 1 error, 1 warning');
});

test('every file is looked at, whatever came before it', async () => {
  const { printed, complaints } = await check('gone.yaml', 'sound.yaml');
  expect(complaints).toEqual(['gone.yaml: cannot be read. Error: no such file']);
  expect(printed).toEqual(['sound.yaml: 0 errors, 0 warnings, 10 steps']);
});

test('what is wrong with a French document is told in French, under the same code', async () => {
  const { complaints } = await check('cassee.yaml');
  const line = FRENCH.split('\n').findIndex((text) => text.includes('tool: petite')) + 1;
  expect(complaints[0]).toMatch(
    new RegExp(
      `^cassee\\.yaml:${line}:\\d+ error unknown-tool Il n’y a pas de «\u00a0petite\u00a0».*Donné\\s: petite\\.`,
    ),
  );
});
