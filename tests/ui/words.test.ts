import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { languages } from '../../src/cli/tongue-files';
import { CARD_KEYS } from '../../src/core/card/card-words';
import { MANNERS } from '../../src/core/job/command';
import { BENCH_WORDS } from '../../src/ui/words/bench-words';
import { EAR_WORDS } from '../../src/ui/words/ear-words';
import { sayer } from '../../src/ui/words/say';
import { SHELL_WORDS } from '../../src/ui/words/shell-words';
import { checkScreenWords, SCREEN_WORDS } from '../../src/ui/words/words';

const ROOT = join(import.meta.dirname, '../..');
const textOf = (language: string): string => readFileSync(join(ROOT, `grammars/${language}/screen.yaml`), 'utf8');
const english: unknown = parse(textOf('en'));

/** All code that draws or passes on screen texts, without the tables of keys themselves. */
const code = ['src/ui', 'src/shell']
  .flatMap((folder) =>
    readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' }).map((file) => join(folder, file)),
  )
  .filter((file) => /\.tsx?$/.test(file) && !/words\/[a-z]+-words\.ts$/.test(file))
  .map((file) => readFileSync(join(ROOT, file), 'utf8'))
  .join('\n');

describe.each(languages())('the screen texts of %s', (language) => {
  test('are complete, each with its own slots and no others', () => {
    expect(checkScreenWords(parse(textOf(language)))).toMatchObject({ ok: true });
  });

  test('of the first screen and the Bench, and of troubles that come as early, are there from the first paint', () => {
    const [first = ''] = textOf(language).split(/^# ====.*$/m);
    const early = ['sound-blocked', 'reading-only', 'pen-taken'];
    const late = Object.keys({ ...SHELL_WORDS, ...BENCH_WORDS, ...EAR_WORDS }).concat(early);
    expect(late.filter((key) => !(key in parse(first)))).toEqual([]);
  });

  test('name days and months in a way that browsers know', () => {
    expect(Intl.DateTimeFormat.supportedLocalesOf([parse(textOf(language))['date-locale']])).toHaveLength(1);
  });
});

describe('the keys of the screen texts', () => {
  test('are all used: a text nobody shows is not kept', () => {
    const unused = Object.keys(SCREEN_WORDS).filter(
      (key) => !/^(button|card)-/.test(key) && !code.includes(`'${key}'`),
    );
    expect(unused).toEqual([]);
  });

  test('have exactly the words of the job card under its own prefix', () => {
    const given = Object.keys(SCREEN_WORDS).filter((key) => key.startsWith('card-'));
    expect(given.toSorted()).toEqual(CARD_KEYS.map((key) => `card-${key}`).toSorted());
  });

  test('label only commands that exist, for the buttons whose key is made from the command', () => {
    const labels = Object.keys(SCREEN_WORDS).filter((key) => key.startsWith('button-'));
    const rules = new Set(Object.keys(MANNERS));
    expect(labels.filter((key) => !rules.has(key.slice('button-'.length)))).toEqual([]);
    expect(labels.length).toBeGreaterThan(10);
  });

  test('label every command that the Bench can put on a button', () => {
    const source = readFileSync(join(ROOT, 'src/core/view/bench-buttons.ts'), 'utf8');
    const picked = [...source.matchAll(/pick\(\[([^\]]*)\]\)/g)].flatMap((m) =>
      [...(m[1] ?? '').matchAll(/'([a-z-]+)'/g)].map((rule) => `button-${rule[1]}`),
    );
    expect(picked.length).toBeGreaterThan(10);
    expect(picked.filter((key) => !(key in SCREEN_WORDS))).toEqual([]);
  });
});

describe('checking screen texts', () => {
  const whole = parse(textOf('en'));
  test.each([
    ['a list instead of a map', [], [{ code: 'not-a-map' }]],
    ['nothing at all', null, [{ code: 'not-a-map' }]],
    ['a key nobody knows', { ...whole, 'no-such-key': 'x' }, [{ code: 'unknown-text', key: 'no-such-key' }]],
    ['a text that is a number', { ...whole, stop: 4 }, [{ code: 'not-text', key: 'stop' }]],
    ['a blank text', { ...whole, stop: '  ' }, [{ code: 'not-text', key: 'stop' }]],
    [
      'a slot that is not filled',
      { ...whole, stop: 'Stop {now}' },
      [{ code: 'unknown-slot', key: 'stop', slot: 'now' }],
    ],
    [
      'a slot that is left out',
      { ...whole, 'loose-ends-count': 'Loose ends' },
      [{ code: 'unused-slot', key: 'loose-ends-count', slot: 'count' }],
    ],
  ])('finds %s', (_name, given, error) => {
    expect(checkScreenWords(given)).toEqual({ ok: false, error });
  });

  test('finds a text that is missing', () => {
    const { stop: _stop, ...rest } = whole;
    expect(checkScreenWords(rest)).toEqual({ ok: false, error: [{ code: 'missing-text', key: 'stop' }] });
  });
});

test('a text is said with its slots filled', () => {
  const checked = checkScreenWords(english);
  if (!checked.ok) throw new Error('the English texts are broken');
  const say = sayer({ ...checked.value, 'filter-found': '{found} of {of}, {found} shown' });
  expect(say('filter-found', { found: 0, of: 12 })).toBe('0 of 12, 0 shown');
});
