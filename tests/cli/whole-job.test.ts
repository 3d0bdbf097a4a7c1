import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { expect, test, vi } from 'vitest';
import { readTongue } from '../../src/cli/tongue-files';
import { scriptOf } from '../cases/script-of';

vi.setConfig({ testTimeout: 180_000 });

const PROCEDURE = 'procedures/tarnbeck-head-gasket.yaml';
const SCRIPT = 'tests/cases/spoken/whole-job.txt';
const HEAD = `# The whole job by somebody who does everything right, from the first step to the closed record. Demonstration data.
# Made by this folder's script-of.ts: CASES_UPDATE=1 npx vitest run --config src/vite.config.ts tests/cli/whole-job.test.ts
`;

if (process.env.CASES_UPDATE === '1')
  test('the script is written anew', async () => {
    writeFileSync(SCRIPT, `${HEAD}${(await scriptOf(PROCEDURE, readTongue('en'))).join('\n')}\n`);
  });

test('the whole job, rehearsed from a script of typed words, comes to its closed record', () => {
  const printed = execFileSync('node_modules/.bin/tsx', ['src/cli/rehearse.ts', PROCEDURE, SCRIPT], {
    encoding: 'utf8',
    maxBuffer: 1 << 24,
  });
  expect(printed).not.toContain('(not a command');
  expect(printed.trimEnd().split('\n').at(-1)).toBe('  [closed]');
  const said = readFileSync(SCRIPT, 'utf8')
    .split('\n')
    .filter((line) => line !== '' && !/^[#+]/.test(line));
  expect(printed.split('\n').filter((line) => line.startsWith('> '))).toHaveLength(said.length);
  // Both heads, every pass of every bolt.
  expect(said.filter((line) => /^bolt .* done$/.test(line)).length).toBeGreaterThan(100);
});
