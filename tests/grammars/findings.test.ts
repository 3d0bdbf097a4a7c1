import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { checkDocument } from '../../src/cli/check-document';
import { languages, readFindingsFile, readWordingFile } from '../../src/cli/tongue-files';
import { dimensionOf, UNIT_NAMES, type UnitName } from '../../src/core/fastening/unit';
import { unitsSpelt } from '../../src/core/fastening/unit-spelling';
import { codeOf, finding, part } from '../../src/core/procedure/finding';
import { FINDINGS } from '../../src/core/procedure/finding-keys';
import { readFindingWords, tellFinding } from '../../src/core/procedure/finding-words';
import { ISSUE_CODES } from '../../src/core/procedure/issue';
import { readWording } from '../../src/core/procedure/wording';

const ROOT = join(import.meta.dirname, '../..');
const rawOf = (language: string, name: string): unknown =>
  parse(readFileSync(join(ROOT, `grammars/${language}/${name}.yaml`), 'utf8'));

/** The code of the checker without its table of keys. */
const code = readdirSync(join(ROOT, 'src/core/procedure'), { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts') && file !== 'finding-keys.ts')
  .map((file) => readFileSync(join(ROOT, 'src/core/procedure', file), 'utf8'))
  .join('\n');

describe('the keys of findings', () => {
  test('belong to codes, and every code has one', () => {
    const codes = Object.entries(FINDINGS).map(([key]) => codeOf({ key: key as keyof typeof FINDINGS, slots: {} }));
    expect([...new Set(codes)].toSorted()).toEqual([...ISSUE_CODES].toSorted());
  });

  test('are all used: a text nobody shows is not kept', () => {
    expect(Object.keys(FINDINGS).filter((key) => !code.includes(`'${key}'`))).toEqual([]);
  });
});

describe.each(languages())('the findings of %s', (language) => {
  const words = readFindingsFile(language);

  test('are complete, each with its slots and no others', () => {
    expect(readFindingWords(rawOf(language, 'findings'))).toMatchObject({ ok: true });
  });

  test('are sentences', () => {
    const open = Object.entries(words.findings).flatMap(([key, { wrong, mend }]) =>
      [wrong, mend]
        .filter((text) => text !== '{mend}' && !/^[\p{Lu}"«{][^\n]*[.?](?:"|\u00a0»)?$/u.test(text))
        .map(() => key),
    );
    expect(open).toEqual([]);
  });

  test('put lists, parts and braces where they belong', () => {
    const { wrong } = tellFinding(
      words,
      finding('order-not-permutation', { faults: [part('numbers-twice', { numbers: [3, 4] })] }),
    );
    expect(wrong).toMatch(/: \p{L}[\p{L} ]* 3, 4\.$/u);
    expect(tellFinding(words, finding('repeat-not-in-id', { id: 'x' })).mend).toMatch(/ \{side\}/);
    const near = part('did-you-mean', { meant: '{id}' });
    expect(tellFinding(words, finding('unknown-tool', { id: 'a', mend: near })).mend).toMatch(/^\p{Lu}.*\{id\}/u);
  });
});

test('a file with a text too few, a slot too many and a key of nobody is told so', () => {
  const [language = ''] = languages();
  const raw = rawOf(language, 'findings') as { findings: Record<string, Record<string, string>> };
  delete raw.findings['alias'];
  raw.findings['never-used'] = { wrong: '"{id}" of {nobody}.', mend: 'Delete it.' };
  raw.findings['opened-twice'] = { wrong: 'Open already.', mend: 'Close it.' };
  raw.findings['no-such'] = { wrong: 'No.', mend: 'No.' };
  const read = readFindingWords(raw);
  const issues = read.ok ? [] : read.error.map(({ code, at }) => `${code} ${at}`);
  expect(issues).toEqual(
    expect.arrayContaining([
      'missing-key findings.alias',
      'unknown-slot findings.never-used',
      'unused-slot findings.opened-twice',
      'unknown-key findings.no-such',
    ]),
  );
});

describe.each(languages())('the wording of %s', (language) => {
  const { warns, clock, units } = readWordingFile(language);

  test('is complete', () => {
    expect(readWording(rawOf(language, 'wording'))).toMatchObject({ ok: true });
    expect(new Set(clock).size).toBe(24);
    expect(warns.length).toBeGreaterThan(0);
  });

  test.each(warns)('finds a warning that begins with "%s" behind its action', (words) => {
    const say = `Abc. ${words.charAt(0).toUpperCase()}${words.slice(1)} xyz.`;
    const late = (text: string) =>
      checkDocument(text, 'late.yaml').warnings.filter((w) => w.code === 'warning-after-action');
    expect(late(minimal(language, say))).toHaveLength(1);
    expect(late(minimal(language, say.slice('Abc. '.length)))).toHaveLength(0);
    expect(late(minimal(language, `Abc. ${words}é xyz.`))).toHaveLength(0);
  });

  test.each(namedUnits(language))('reads "%s" as %s, and its plural', (name, unit) => {
    const plural = name.replaceAll(/(?<=\p{L}{3,})(?<!s)\b(?!\p{L})/gu, 's');
    for (const spelt of [name, name.toUpperCase(), plural])
      expect(unitsSpelt(spelt, dimensionOf(unit), units)).toContain(unit);
    expect(unitsSpelt(`${name}q`, undefined, units)).toEqual([]);
  });

  test('calls the places of a circle by the clock', () => {
    const checked = checkDocument(minimal(language, 'Abc.'), 'circle.yaml');
    const said = checked.ok
      ? [...(checked.value.patterns.get('ring')?.fasteners ?? [])].map(({ say }) => say)
      : checked.error;
    expect(said).toEqual([clock[0], clock[6], clock[12], clock[18]]);
  });
});

/** Every name of a unit with the unit. */
function namedUnits(language: string): readonly (readonly [string, UnitName])[] {
  const raw = rawOf(language, 'wording') as { units: Record<UnitName, readonly string[]> };
  return UNIT_NAMES.flatMap((unit) => (raw.units[unit] ?? []).map((name) => [name, unit] as const));
}

const minimal = (language: string, say: string): string => `format: 1
language: ${language}
id: least
title: Abc
edition: one
demonstration: true
source: Abc
machine: Abc
tools: {}
parts: {}
patterns:
  ring: { say: ring, viewed-from: above, circle: { count: 4, diameter: 100 }, order: cross }
phases:
  - id: only
    say: Abc
    steps:
      - { id: a, say: ${JSON.stringify(say)} }
      - { id: t, kind: tighten, say: Abc, pattern: ring, passes: [{ id: p, say: one, torque: 20 N·m }] }
`;
