import { readFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { stringify } from 'yaml';
import { checkDocument } from '../../../src/cli/check-document';
import type { ProcedureCheck } from '../../../src/core/procedure/check-procedure';
import { SEED, tries } from '../../long';
import { SOUND } from './sound-document';
import { expectTold } from './told';

// Two cores are shared with other test files: these take seconds, and more than the usual limit on a busy machine.
vi.setConfig({ testTimeout: tries(120_000, 7_200_000) });

/** Whatever comes in, either a procedure or findings that say where, what and how to mend it. */
function expectAnswer(checked: ProcedureCheck): void {
  const issues = checked.ok ? checked.warnings : checked.error;
  if (!checked.ok) expect(issues.length).toBeGreaterThan(0);
  for (const issue of issues) expectTold(issue, issue.file);
}

const JUNK = [
  '{',
  '}',
  '[',
  ']',
  ': ',
  '- ',
  '\n',
  '\n  ',
  '"',
  "'",
  '# ',
  '&a ',
  '*a ',
  '!x ',
  '|\n',
  '>\n',
  '? ',
  '---\n',
  '...\n',
  '%YAML 1.1\n',
  '\t',
  '\0',
  '\u202e',
  '\ud800',
  '\u2028',
  '1e999',
  '.inf',
  '.nan',
  'null',
  '~',
  'true',
  '-1',
  '0x10',
  '{side}',
  '9999999999°',
  'N·m',
  '__proto__',
  'constructor',
  'toString',
  '<<: ',
  'for: [a, b]\n',
  'reverse of low',
  ', ',
]; // prettier-ignore

const edit = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  drop: fc.nat({ max: 12 }),
  put: fc.oneof(fc.constantFrom(...JUNK), fc.string({ maxLength: 6 })),
});
const swap = fc.record({ from: fc.nat({ max: 400 }), to: fc.nat({ max: 400 }) });
const document = fc.constantFrom(SOUND, readFileSync('procedures/tarnbeck-head-slice.yaml', 'utf8'));

test('a document with pieces knocked out, put in or swapped is answered, never thrown at', () => {
  fc.assert(
    fc.property(document, fc.array(edit, { maxLength: 4 }), fc.array(swap, { maxLength: 2 }), (text, edits, swaps) => {
      const edited = edits.reduce((t, { at, drop, put }) => {
        const place = Math.floor(at * t.length);
        return t.slice(0, place) + put + t.slice(place + drop);
      }, text);
      const lines = edited.split('\n');
      for (const { from, to } of swaps) lines.splice(to % lines.length, 0, ...lines.splice(from % lines.length, 1));
      expectAnswer(checkDocument(lines.join('\n'), 'mutant.yaml'));
    }),
    { numRuns: tries(250, 20_000), seed: SEED },
  );
});

test('any YAML whatever is answered', () => {
  fc.assert(
    fc.property(fc.jsonValue({ maxDepth: 4 }), (value) => expectAnswer(checkDocument(stringify(value), 'any.yaml'))),
    { numRuns: tries(100, 5_000), seed: SEED },
  );
});

test('a key may hold any value of any kind', () => {
  const keys = [...SOUND.matchAll(/^ *([a-z-]+): (?=\S)/gm)].map(([line]) => line);
  fc.assert(
    fc.property(fc.constantFrom(...keys), fc.jsonValue({ maxDepth: 2 }), (key, value) => {
      const at = SOUND.indexOf(key) + key.length;
      const text = SOUND.slice(0, at) + JSON.stringify(value) + SOUND.slice(SOUND.indexOf('\n', at));
      expectAnswer(checkDocument(text, 'value.yaml'));
    }),
    { numRuns: tries(150, 5_000), seed: SEED },
  );
});

const levels = Array.from({ length: 30 }, (_, i) => `b${i}: &b${i} [*b${i - 1}, *b${i - 1}]`).join('\n');

test.each([
  ['aliases that double thirty times', levels],
  ['ten thousand keys', Array.from({ length: 10_000 }, (_, i) => `k${i}: 1`).join('\n')],
  ['brackets without end', '['.repeat(100_000)],
  ['the same key for ever', 'k: 1\n'.repeat(20_000)],
  ['tags for ever', '!a '.repeat(30_000)],
  ['repeats inside repeats', repeatsInRepeats()],
])('%s are answered like anything else', (_name, text) => {
  const checked = checkDocument(text, 'bomb.yaml');
  expect(checked.ok).toBe(false);
  expectAnswer(checked);
});

/** Asks for 100 x 24 x 24 steps in a file of a hundred kilobytes. */
function repeatsInRepeats(): string {
  const words = Array(24).fill('word').join(', ');
  const step = (i: number) => `          - { id: 's${i}-{a}-{b}', say: '${'{b}'.repeat(60)}', for: { b: [${words}] } }`;
  const steps = Array.from({ length: 100 }, (_, i) => step(i)).join('\n');
  const block = `      - kind: each\n        for: { a: [${words}] }\n        steps:\n${steps}\n`;
  return SOUND.replace('      - id: hoses-on', () => `${block}      - id: hoses-on`);
}
