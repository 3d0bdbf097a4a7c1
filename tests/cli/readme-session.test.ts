import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const args = ['src/cli/rehearse.ts', 'procedures/tarnbeck-head-slice.yaml', 'tests/cases/spoken/readme-session.txt'];

test('the session in the README is what the command prints', () => {
  const printed = execFileSync('node_modules/.bin/tsx', args, { encoding: 'utf8' }).trimEnd();
  const shown = /```text\n([\s\S]*?)\n```/.exec(readFileSync('README.md', 'utf8'))?.[1];
  expect(shown).toBe(printed);
});

test('a reader that has seen enough of it closes the pipe, and nothing is wrong', () => {
  const piped = `node_modules/.bin/tsx ${args.join(' ')} | head -1; exit ${'$'}{PIPESTATUS[0]}`;
  const { status, stdout, stderr } = spawnSync('bash', ['-c', piped], { encoding: 'utf8' });
  expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  expect(stdout).toContain('Left head gasket');
});
