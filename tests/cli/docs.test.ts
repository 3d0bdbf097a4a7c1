import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { parse, stringify } from 'yaml';
import { checkDocument } from '../../src/cli/check-document';
import { editorSchema } from '../../src/cli/editor-schema/editor-schema';
import { fieldRows } from '../../src/cli/procedure/guide-fields';
import { MEANINGS } from '../../src/cli/procedure/guide-meanings';
import { MISTAKES } from '../../src/cli/procedure/guide-mistakes';
import { exampleIn, guideFrom } from '../../src/cli/procedure-guide';
import { ISSUE_CODES } from '../../src/core/procedure/issue';
import { fencedBlocks } from './fenced-blocks';

const ROOT = join(import.meta.dirname, '../..');
const GUIDE = 'procedures/README.md';
const guide = readFileSync(join(ROOT, GUIDE), 'utf8');

/** Every Markdown page of the project, wherever it stands. */
const pages = ['.', ...readdirSync(ROOT).filter((name) => !/^(?:\.git|node_modules|dist|test-output)$/.test(name))]
  .flatMap((folder) => (folder === '.' ? readdirSync(ROOT) : inside(folder)))
  .filter((path) => path.endsWith('.md'));

function inside(folder: string): readonly string[] {
  const entries = readdirSync(ROOT, { withFileTypes: true }).find(({ name }) => name === folder);
  if (!entries?.isDirectory()) return [];
  return readdirSync(join(ROOT, folder), { recursive: true }).map((path) => `${folder}/${path}`);
}

const blocks = pages.flatMap((page) =>
  fencedBlocks(readFileSync(join(ROOT, page), 'utf8')).map((block) => ({
    ...block,
    page,
    at: `${page}:${block.line}`,
  })),
);
const ofKind = (kind: RegExp) => blocks.filter(({ info }) => kind.test(info));

describe('every block of every page', () => {
  test('pages and blocks are found', () => {
    expect(pages).toContain(GUIDE);
    expect(blocks.length).toBeGreaterThan(5);
  });

  test.each(blocks)('$at says what it is', ({ info }) => {
    // "yaml" is a whole document and "sh" is only looked at, unless they say otherwise. A slip of a word fails here.
    expect(info).toMatch(/^(?:yaml(?: whole(?: example)?| fragment)?|sh(?: run| listed)?|(?!yaml|sh\b)[a-z]+)$/);
  });
});

const errorsOf = (text: string, at: string): readonly string[] => {
  const checked = checkDocument(text, at);
  return [...(checked.ok ? [] : checked.error), ...checked.warnings].map(
    ({ line, code, given }) => `${at}+${line} ${code} ${given}`,
  );
};

describe('documents', () => {
  test.each(ofKind(/^yaml(?: whole.*)?$/))('$at has nothing wrong with it', ({ text, at }) => {
    expect(errorsOf(text, at)).toEqual([]);
  });

  // A fragment shows one thing. What it names and does not use itself is no fault of it.
  test.each(ofKind(/^yaml fragment$/))('$at fits into the example', ({ text, at }) => {
    const whole = parse(exampleIn(guide));
    const fragment = parse(text);
    if (Array.isArray(fragment)) whole.phases.at(-1).steps.unshift(...fragment);
    else for (const [key, entries] of Object.entries(fragment)) Object.assign(whole[key], entries);
    const wrong = errorsOf(stringify(whole), at).filter((line) => !/ never-used | loose-end-never-closed /.test(line));
    expect(wrong).toEqual([]);
  });
});

/** A folder with the shipped documents and an npm that runs the project's own scripts, and no other. */
function workbench(): string {
  const folder = mkdtempSync(join(tmpdir(), 'wrenchside-docs-'));
  cpSync(join(ROOT, 'procedures'), join(folder, 'procedures'), { recursive: true });
  mkdirSync(join(folder, 'bin'));
  const scripts: Record<string, string> = {
    procedure: 'tsx src/cli/procedure.ts',
    ...JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')).scripts,
  };
  const cases = Object.entries(scripts).flatMap(([name, script]) => {
    const program = /^tsx (src\/\S+\.ts)$/.exec(script)?.[1];
    return program ? [`  ${name}) exec "${ROOT}/node_modules/.bin/tsx" "${ROOT}/${program}" "$@" ;;`] : [];
  });
  const npm = [
    '#!/bin/sh',
    'test "$1" = run && shift',
    'test "$1" = --silent && shift',
    'name="$1"; shift; test "$1" = -- && shift',
    'case "$name" in',
    ...cases,
    '  *) echo "no script $name is run here" >&2; exit 127 ;;',
    'esac',
  ];
  writeFileSync(join(folder, 'bin/npm'), `${npm.join('\n')}\n`);
  chmodSync(join(folder, 'bin/npm'), 0o755);
  return folder;
}

describe('shell blocks', () => {
  let folder = '';
  beforeAll(() => {
    folder = workbench();
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const shell = (flags: readonly string[], text: string) =>
    // Without the machine's own settings: bash reads them even here where it takes its caller for a remote one.
    spawnSync('bash', ['--norc', ...flags, '-c', text], {
      cwd: folder,
      encoding: 'utf8',
      input: '',
      env: { ...process.env, PATH: `${folder}/bin:${process.env['PATH']}` },
    });

  test.each(ofKind(/^sh(?: |$)/))('$at is well formed', ({ text }) => {
    expect(shell(['-n'], text)).toMatchObject({ status: 0, stderr: '' });
  });

  // In the order of the page: a block may use what an earlier one wrote.
  test.each(ofKind(/^sh run$/))('$at runs', { timeout: 120_000 }, ({ text }) => {
    const { status, stderr } = shell(['-eu', '-o', 'pipefail'], text);
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  });

  test('and wrote what the guide says', () => {
    expect(errorsOf(readFileSync(join(folder, 'pump.yaml'), 'utf8'), 'pump.yaml')).toEqual([]);
    expect(readFileSync(join(folder, 'pump.svg'), 'utf8')).toMatch(/^<svg /);
    expect(readFileSync(join(folder, 'card.html'), 'utf8')).toMatch(/^<!doctype html>/);
  });
});

describe('the tables of the guide', () => {
  test('are the ones the program writes (npx tsx src/cli/procedure-guide.ts)', () => {
    expect(guide).toBe(guideFrom(guide));
  });

  test('give every field a meaning, and no meaning to a field that is not there', () => {
    const rows = fieldRows();
    expect(rows.filter(({ meanings }) => meanings.length === 0).map(({ table, field }) => `${table} ${field}`)).toEqual(
      [],
    );
    const known = new Set(rows.map(({ table, field }) => `${table} ${field}`));
    expect(Object.keys(MEANINGS).filter((key) => !known.has(key))).toEqual([]);
  });

  test('leave out no field of the schema', () => {
    const named = new Set(fieldRows().map(({ field }) => field));
    const inSchema = [...editorSchema().matchAll(/"properties": \{/g)].length;
    expect(inSchema).toBeGreaterThan(20);
    expect(propertiesIn(JSON.parse(editorSchema())).filter((name) => !named.has(name))).toEqual([]);
  });

  test('show a mistake for every code of the checker, once', () => {
    expect(MISTAKES.map(({ code }) => code).toSorted()).toEqual(ISSUE_CODES.toSorted());
  });
});

function propertiesIn(schema: unknown): readonly string[] {
  if (typeof schema !== 'object' || schema === null) return [];
  return Object.entries(schema).flatMap(([key, value]) =>
    key === 'properties' ? [...Object.keys(value), ...Object.values(value).flatMap(propertiesIn)] : propertiesIn(value),
  );
}

test('the documents that the guide lists are the ones that are there', () => {
  const listed = [...guide.matchAll(/^\| `([\w.-]+)` \|/gm)].flatMap(([, name = '']) =>
    name.endsWith('.yaml') ? [name] : [],
  );
  const there = readdirSync(join(ROOT, 'procedures')).filter((name) => name.endsWith('.yaml'));
  expect(listed.toSorted()).toEqual(there.toSorted());
  expect(existsSync(join(ROOT, GUIDE))).toBe(true);
});
