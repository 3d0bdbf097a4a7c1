import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

test('the session in the README is what the command prints', () => {
  const args = ['src/cli/rehearse.ts', 'procedures/tarnbeck-head-slice.yaml', 'tests/cases/spoken/readme-session.txt'];
  const printed = execFileSync('node_modules/.bin/tsx', args, { encoding: 'utf8' }).trimEnd();
  const shown = /```text\n([\s\S]*?)\n```/.exec(readFileSync('README.md', 'utf8'))?.[1];
  expect(shown).toBe(printed);
});
