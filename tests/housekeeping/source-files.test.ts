import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const MOST_LINES = 300;

const sources = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter((name) => /\.tsx?$/.test(name));

test(`no file of src is longer than ${MOST_LINES} lines`, () => {
  const lines = sources.map((name) => ({
    name,
    lines: readFileSync(join('src', name), 'utf8').split('\n').length - 1,
  }));
  expect(lines.length).toBeGreaterThan(100);
  expect(lines.filter((file) => file.lines > MOST_LINES)).toEqual([]);
});

test.each(['utils', 'helpers', 'common', 'types', 'misc', 'lib'])(
  'no file is named %s: it would be named after nothing',
  (name) => {
    expect(sources.filter((path) => path.split(/[/\\]/).some((part) => part.replace(/\.tsx?$/, '') === name))).toEqual(
      [],
    );
  },
);
