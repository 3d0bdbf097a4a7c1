import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { logFields, logPageFrom, meaningOf } from '../../../src/cli/log-format';
import { FIELDS } from '../../../src/cli/log-format/meanings';
import { checkJobFile, printJobFile, readJson } from '../../../src/core/log/job-file';
import { atOnce } from '../../../src/core/pieces';
import { printing } from '../../../src/store/hand-over';
import { plateJob, STARTED } from '../../shell/plate-job';
import { nodeHash } from './sample-log';
import { verified } from './verifier';

const page = readFileSync('src/core/log/README.md', 'utf8');
const example = /```json\n([\s\S]*?)```/.exec(page)?.[1] ?? '';

function read(text: string) {
  const root = readJson(text);
  return root.ok ? checkJobFile(root.value, nodeHash) : root;
}

describe('the page on the log', () => {
  test('has the tables the program writes (npx tsx src/cli/log-format.ts)', () => {
    expect(page).toBe(logPageFrom(page));
  });

  test('gives every field a meaning, and none to a field that is not there', () => {
    const fields = logFields();
    expect(fields.filter(([kind, field]) => meaningOf(kind, field) === undefined)).toEqual([]);
    const known = new Set(fields.flatMap(([kind, field]) => [field, `${kind} ${field}`]));
    expect(Object.keys(FIELDS).filter((key) => !known.has(key))).toEqual([]);
  });

  test('shows a file that is whole, by its own rules and by the program', () => {
    expect(verified(example)).toBe('whole');
    expect(read(example)).toMatchObject({ ok: true });
  });

  test('is linked from the README', () => {
    expect(readFileSync('README.md', 'utf8')).toContain('(src/core/log/README.md)');
  });
});

/** Words that strain a canonical writing: quotes, line ends, beyond the basic plane, half of a pair, numbers of all sizes. */
const job = plateJob([
  STARTED,
  { kind: 'session-opened' },
  {
    kind: 'heard',
    words: 'set “at” "fifteen"\n\u2028 \u{1f527} \ud83d "hash":"00",',
    score: 1e-7,
    by: 'typed',
    command: 'set-at',
  },
  { kind: 'measured', step: 's', reading: 'r', value: -0, unit: 'mm', within: null },
  { kind: 'timer-started', timer: 't', ms: 1e7 + 0.1 },
  { kind: 'asked', question: { kind: 'adapter', millimetres: null, degrees: 12.5 } },
]);
const whole = atOnce(printing(job, [{ id: 'note-1', mime: 'audio/wav', bytes: Uint8Array.of(1, 2, 3) }]));

describe('a reader written from the page', () => {
  test('finds a file of the program whole', () => {
    expect(verified(whole)).toBe('whole');
  });

  test('finds a file of version 1 whole, though no such entry is written any more', () => {
    const { head, texts }: { head: typeof job.head; texts: readonly string[] } = JSON.parse(
      readFileSync('tests/core/log/kept-job-v1.json', 'utf8'),
    );
    expect(verified(printJobFile({ card: job.card, head, texts, blobs: [] }))).toBe('whole');
  });

  test.each([
    ['a letter of an entry', (t: string) => t.replace('\\"machine\\":\\"plate\\"', '\\"machine\\":\\"prate\\"')],
    ['a time of an entry', (t: string) => t.replace('\\"at\\":1,', '\\"at\\":2,')],
    ['a space in an entry', (t: string) => t.replace('\\"kind\\":', '\\"kind\\": ')],
    ['the head', (t: string) => t.replace(/"seq": 6/, '"seq": 5')],
    ['an entry left out', (t: string) => without(t, 2)],
    ['the last entry left out', (t: string) => without(t, 5)],
    ['another format', (t: string) => t.replace('wrenchside-job', 'another-job')],
  ])('and the program both find %s', (_, edit) => {
    const edited = edit(whole);
    expect(edited).not.toBe(whole);
    expect(verified(edited)).not.toBe('whole');
    expect(read(edited).ok).toBe(false);
  });

  test('names the entry that the program names, wherever a byte is changed', () => {
    for (let at = whole.indexOf('"entries"') + 16; at < whole.indexOf('"blobs"') - 10; at += 97) {
      const edited = `${whole.slice(0, at)}${whole[at] === 'x' ? 'y' : 'x'}${whole.slice(at + 1)}`;
      const ours = read(edited);
      if (ours.ok) throw new Error(`the program takes a byte changed at ${at}`);
      const [issue] = ours.error;
      const verdict = verified(edited);
      if (issue?.code === 'broken-log') expect(verdict).toMatchObject({ entry: issue.good + 1 });
      else expect(verdict).not.toBe('whole');
    }
  });
});

function without(text: string, index: number): string {
  const file: { entries: readonly string[] } = JSON.parse(text);
  return JSON.stringify({ ...file, entries: file.entries.toSpliced(index, 1) });
}
