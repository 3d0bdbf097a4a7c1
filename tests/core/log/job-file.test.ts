import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { headOf } from '../../../src/core/log/chain';
import { checkJobFile, LONGEST_FILE, printJobFile, readJson } from '../../../src/core/log/job-file';
import { SEED, tries } from '../../long';
import { nodeHash, sealedLog, textsOf } from './sample-log';

const log = sealedLog();
const last = log.at(-1) ?? { seq: 0, hash: '' };
const FILE = {
  card: {
    id: 'job-1',
    title: 'Left bank',
    procedure: 'top-end',
    created: 1_700_000_000_000,
    who: 'Mechanic',
    closed: false,
  },
  head: headOf(last),
  texts: textsOf(log),
  blobs: [{ id: 'clip-1', mime: 'audio/webm;codecs=opus', base64: 'UklGRg==' }],
};
const printed = printJobFile(FILE);

function parseJobFile(text: string, hash: typeof nodeHash) {
  const root = readJson(text);
  return root.ok ? checkJobFile(root.value, hash) : root;
}

/** The issues of the printed file after a change, as `code at`. */
function issuesAfter(change: (file: Record<string, never> & Record<string, unknown>) => void): readonly string[] {
  const file = JSON.parse(printed);
  change(file);
  return issuesOf(JSON.stringify(file));
}

function issuesOf(text: string): readonly string[] {
  const file = parseJobFile(text, nodeHash);
  return file.ok ? [] : file.error.map(({ code, at }) => `${code} ${at}`);
}

describe('a hand-over file', () => {
  test('reads back as it was printed, every entry to the byte', () => {
    const file = parseJobFile(printed, nodeHash);
    expect(file.ok && file.value).toMatchObject(FILE);
    expect(file.ok && file.value.entries).toHaveLength(log.length);
  });

  test('may leave its blobs out', () => {
    expect(issuesAfter((file) => delete file.blobs)).toEqual([]);
  });

  test('may be empty of entries', () => {
    const empty = { ...FILE, head: { seq: 0, hash: '0'.repeat(64) }, texts: [], blobs: [] };
    expect(issuesOf(printJobFile(empty))).toEqual([]);
  });
});

describe('a file that cannot be taken', () => {
  test.each([
    ['is empty', '', ['not-json ']],
    ['is cut in half', printed.slice(0, 300), ['not-json ']],
    ['is not an object', '"job"', ['not-a-job-file /format']],
    ['is another kind of file', '{"format":"other"}', ['not-a-job-file /format']],
    ['is a nest of brackets', '['.repeat(500_000), ['not-json ']],
    ['names its format in a prototype', '{"__proto__":{"format":"wrenchside-job"}}', ['not-a-job-file /format']],
  ])('because it %s', (_, text, issues) => {
    expect(issuesOf(text)).toEqual(issues);
  });

  test('because it is of a newer version, which says so by its own code', () => {
    const file = parseJobFile(printed.replace('"version": 1', '"version": 2'), nodeHash);
    expect(!file.ok && file.error).toEqual([{ code: 'newer-file', at: '/version', given: '2', known: 1 }]);
  });

  test('because it is longer than any', () => {
    const endless = { length: LONGEST_FILE + 1 } as string; // A text of that size would not fit beside the other tests.
    expect(issuesOf(endless)).toEqual(['too-big ']);
  });

  test('lists every fault of shape, each with its place', () => {
    const issues = issuesAfter((file) => {
      Object.assign(file, {
        job: { id: '', title: 7, created: 'today', who: null, closed: 'no', constructor: 'x' },
        head: [],
        entries: ['{}', 5],
        blobs: [
          { id: 'a', mime: 'text/html', base64: '****' },
          { id: 'a', mime: 'image/svg+xml', base64: 'AAAA' },
          'clip',
        ],
      });
    });
    expect(issues).toEqual([
      'wrong-type /head',
      'wrong-type /job/id',
      'wrong-type /job/title',
      'missing /job/procedure',
      'wrong-type /job/created',
      'wrong-type /job/who',
      'wrong-type /job/closed',
      'missing /head/seq',
      'missing /head/hash',
      'wrong-type /entries/1',
      'not-base64 /blobs/0/base64',
      'wrong-type /blobs/0/mime',
      'wrong-type /blobs/1/mime',
      'missing /blobs/2/base64',
      'missing /blobs/2/id',
      'missing /blobs/2/mime',
      'duplicate /blobs/1/id',
    ]);
  });

  test('because an entry was edited: says which, what stood there, and how much before it is whole', () => {
    const edited = printed.replace('bolt two done', 'bolt six done');
    const file = parseJobFile(edited, nodeHash);
    expect(!file.ok && file.error).toMatchObject([
      { code: 'broken-log', at: '/entries/3', problem: { code: 'bad-hash' }, good: 3 },
    ]);
    expect(!file.ok && file.error[0]?.given).toContain('"at":1700000003000');
  });

  test('because its last entries are missing', () => {
    expect(issuesAfter((file) => (file.entries as unknown as string[]).pop())).toEqual(['broken-log /entries/4']);
  });
});

describe('whatever a file holds, there is an answer', () => {
  test('any text', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.json({ stringUnit: 'binary' })), (text) => {
        expect(parseJobFile(text, nodeHash).ok).toBe(false);
      }),
    );
  });

  test('any value in the place of any member', () => {
    const members = ['version', 'job', 'head', 'entries', 'blobs'];
    const odd = fc.oneof(
      fc.jsonValue({ stringUnit: 'binary' }),
      fc.constantFrom('__proto__', '\ud800', 1e308, -0, [[]], { toString: 1 }, { length: 9 }, { __proto__: null }),
    );
    fc.assert(
      fc.property(fc.constantFrom(...members), odd, fc.boolean(), (member, value, inside) => {
        const issues = issuesAfter((file) => {
          Object.assign(file, { [member]: inside ? [value] : value });
        });
        expect(issues.every((issue) => /^[a-z-]+ /.test(issue))).toBe(true);
      }),
    );
  });

  test('any one character of a good file changed, cut or put in: refused, or the log is the same to the byte', () => {
    fc.assert(
      fc.property(fc.nat({ max: printed.length - 1 }), fc.string({ unit: 'binary', maxLength: 1 }), (at, put) => {
        const file = parseJobFile(printed.slice(0, at) + put + printed.slice(at + 1), nodeHash);
        if (file.ok) expect(file.value.texts).toEqual(FILE.texts);
        else expect(file.error.length).toBeGreaterThan(0);
      }),
      { numRuns: tries(1500, 20_000), seed: SEED },
    );
  });
});
