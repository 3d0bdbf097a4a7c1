import { createHash } from 'node:crypto';
import { gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkArchive } from '../../src/speech/vosk/archive-check';
import { tries } from '../long';
import { blobOf, modelFiles, packed, repacked, STATIC_MODEL, TONE_MODEL } from './archives';
import { OTHER, TONE_WORDS } from './tone-words';

const check = (bytes: Uint8Array) => checkArchive(blobOf(bytes));

describe('a model that takes a grammar is let through', () => {
  test('with its folder, its size, the SHA-256 of the file and its words, read from the graph itself', async () => {
    const checked = await check(TONE_MODEL);
    expect(checked).toMatchObject({
      ok: true,
      value: {
        folder: 'tone-model',
        bytes: TONE_MODEL.length,
        // Node's own digest of the same bytes.
        sha256: createHash('sha256').update(TONE_MODEL).digest('hex'),
      },
    });
    // The graph was written by OpenFst's own tools.
    expect(checked.ok && [...checked.value.words].sort()).toEqual(['<eps>', OTHER, ...TONE_WORDS].sort());
  });

  test('and tells how far it has read', async () => {
    const seen: number[] = [];
    await checkArchive(blobOf(TONE_MODEL), (done, total) => seen.push(done / total));
    expect(seen.at(-1)).toBe(1);
  });

  // GNU tar writes each of them; the long name does not fit the hundred bytes of a plain header.
  test.each(['ustar', 'gnu', 'pax', 'v7'] as const)('packed by tar as %s', async (format) => {
    const long = format === 'v7' ? {} : { [`m/${'deep/'.repeat(24)}notes.txt`]: 'x'.repeat(700) };
    const checked = await check(packed({ ...modelFiles('m'), ...long }, format));
    expect(checked).toMatchObject({ ok: true, value: { folder: 'm', words: ['<eps>', 'stop', 'done', OTHER] } });
  });

  test('packed from inside its parent folder, every name led by a dot', async () => {
    expect(await check(packed(modelFiles('m'), 'ustar', true))).toMatchObject({ ok: true, value: { folder: 'm' } });
  });
});

describe('anything else is refused by name', () => {
  const flat = Object.fromEntries(Object.entries(modelFiles('m')).map(([path, text]) => [path.slice(2), text]));
  const without = (...names: readonly string[]): Record<string, string> =>
    Object.fromEntries(Object.entries(modelFiles('m')).filter(([path]) => !names.some((name) => path.endsWith(name))));
  const link = repacked(TONE_MODEL, (tar) => withHeader(tar, (header) => header.write('2', 156)));
  const escaping = repacked(TONE_MODEL, (tar) => withHeader(tar, (header) => header.write('../out', 0)));

  test.each<readonly [name: string, bytes: Uint8Array, fault: object]>([
    ['nothing', Buffer.alloc(0), { code: 'archive-empty' }],
    ['a zip', Buffer.from('PK\u0003\u0004 and so on'), { code: 'archive-not-gzip', looksLike: 'zip' }],
    [
      'a start page in its place',
      Buffer.from('<!doctype html><p>'),
      { code: 'archive-not-gzip', looksLike: 'web-page' },
    ],
    ['a tar unpacked on the way', repackedPlain(), { code: 'archive-not-gzip', looksLike: 'tar' }],
    ['a recording', Buffer.from('RIFF....WAVE'), { code: 'archive-not-gzip', looksLike: 'something-else' }],
    ['a download that broke off', TONE_MODEL.subarray(0, TONE_MODEL.length / 2), { code: 'archive-cut' }],
    ['one without its checksum', TONE_MODEL.subarray(0, -8), { code: 'archive-cut' }],
    ['a tar that broke off', repacked(TONE_MODEL, (tar) => tar.subarray(0, 3_000)), { code: 'archive-cut' }],
    ['a gzip of something else', repacked(TONE_MODEL, () => Buffer.alloc(2_000, 'text ')), { code: 'archive-not-tar' }],
    ['files without a folder', packed(flat), { code: 'archive-no-top-folder' }],
    ['an empty tar', repacked(TONE_MODEL, () => Buffer.alloc(1_024)), { code: 'archive-no-top-folder' }],
    [
      'two models',
      packed({ ...modelFiles('one'), ...modelFiles('two') }),
      { code: 'archive-several-top-folders', names: ['one', 'two'] },
    ],
    ['a folder in a folder', packed(modelFiles('outer/inner')), { code: 'archive-nested', folder: 'outer/inner' }],
    ['no acoustic model', packed(without('final.mdl')), { code: 'archive-file-missing', files: ['am/final.mdl'] }],
    [
      'an empty acoustic model',
      packed({ ...modelFiles('m'), 'm/am/final.mdl': '' }),
      { code: 'archive-file-missing', files: ['am/final.mdl'] },
    ],
    [
      'half a graph',
      packed(without('Gr.fst', 'mfcc.conf')),
      { code: 'archive-file-missing', files: ['conf/mfcc.conf', 'graph/Gr.fst'] },
    ],
    ['words built in', STATIC_MODEL, { code: 'archive-static-graph' }],
    ['no list of words', packed(without('words.txt')), { code: 'archive-no-vocabulary' }],
    ['a link', link, { code: 'archive-odd-entry' }],
    ['a way out of the folder', escaping, { code: 'archive-odd-entry' }],
  ])('%s', async (_name, bytes, fault) => {
    expect(await check(bytes)).toEqual({ ok: false, error: expect.objectContaining(fault) });
  });

  test('one too large, before a byte of it is read', async () => {
    const huge = { size: 201 * 1024 * 1024 } as Blob; // Nothing but its size may be asked.
    expect(await checkArchive(huge)).toMatchObject({ ok: false, error: { code: 'archive-too-large', of: 'archive' } });
  });

  test('a small one that unpacks without end', async () => {
    const zeros = gzipSync(Buffer.alloc(20 * 1024 * 1024));
    const bomb = Buffer.concat(Array.from({ length: 31 }, () => zeros));
    expect(bomb.length).toBeLessThan(1024 * 1024);
    expect(await check(bomb)).toMatchObject({ ok: false, error: { code: 'archive-too-large', of: 'unpacked' } });
  });
});

describe('a damaged archive is an answer, never an accident', () => {
  const edits = fc.array(fc.tuple(fc.nat(), fc.integer({ min: 0, max: 255 })), { minLength: 1, maxLength: 8 });
  const edited = (bytes: Uint8Array, changes: readonly (readonly [number, number])[]): Uint8Array => {
    const copy = Uint8Array.from(bytes);
    for (const [at, byte] of changes) copy[at % copy.length] = byte;
    return copy;
  };
  const isAnswer = async (bytes: Uint8Array): Promise<void> => {
    const checked = await check(bytes);
    if (!checked.ok) expect(checked.error.code).toMatch(/^archive-/);
  };

  test('with bytes changed in the gzip stream', async () => {
    await fc.assert(
      fc.asyncProperty(edits, (changes) => isAnswer(edited(TONE_MODEL, changes))),
      { seed: 20, numRuns: tries(300, 5_000) },
    );
  });

  test('with bytes changed in the tar stream, under a fresh checksum', async () => {
    await fc.assert(
      fc.asyncProperty(edits, (changes) => isAnswer(repacked(TONE_MODEL, (tar) => edited(tar, changes)))),
      { seed: 21, numRuns: tries(300, 5_000) },
    );
  });

  test('cut anywhere', async () => {
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 1, max: TONE_MODEL.length - 1 }), async (length) => {
        expect(await check(TONE_MODEL.subarray(0, length))).toMatchObject({ ok: false });
      }),
      { seed: 22, numRuns: tries(200, 5_000) },
    );
  });

  test('made of anything behind a gzip magic', async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 600 }), (bytes) => isAnswer(Uint8Array.of(0x1f, 0x8b, ...bytes))),
      { seed: 23, numRuns: tries(200, 5_000) },
    );
  });
});

function repackedPlain(): Buffer {
  let plain = Buffer.alloc(0);
  repacked(TONE_MODEL, (tar) => {
    plain = Buffer.from(tar);
    return tar;
  });
  return plain;
}

/** The tar with the header of its first file changed and summed again. */
function withHeader(tar: Buffer, change: (header: Buffer) => void): Buffer {
  const copy = Buffer.from(tar);
  let at = 0;
  while (String.fromCharCode(copy[at + 156] ?? 0) !== '0') at += 512;
  const header = copy.subarray(at, at + 512);
  change(header);
  header.fill(' ', 148, 156);
  const sum = header.reduce((total, byte) => total + byte, 0);
  header.write(`${sum.toString(8).padStart(6, '0')}\0 `, 148);
  return copy;
}
