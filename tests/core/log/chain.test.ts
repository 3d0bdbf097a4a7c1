import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { verifyChain } from '../../../src/core/log/chain';
import { seal } from '../../../src/core/log/envelope';
import { SEED, tries } from '../../long';
import { BODIES, nodeHash, sealedLog, textsOf } from './sample-log';

const log = sealedLog();
const texts = textsOf(log);
const head = { seq: log.length, hash: log.at(-1)?.hash ?? '' };

/** Index of the first bad entry, what is wrong with it, and how many before it can still be read. */
function verdict(given: readonly string[], end: typeof head | null = null) {
  const chain = verifyChain(given, nodeHash, end);
  if (chain.ok) return { ok: chain.value.length };
  return { index: chain.error.index, code: chain.error.problem.code, good: chain.error.good.length };
}

describe('a log as it was written', () => {
  test('verifies, and gives its entries', () => {
    const chain = verifyChain(texts, nodeHash, head);
    expect(chain.ok && chain.value.map(({ kind }) => kind)).toEqual(BODIES.map(({ kind }) => kind));
  });

  test('verifies when it is empty', () => {
    expect(verdict([])).toEqual({ ok: 0 });
  });

  test('of version 1 still verifies, to the byte', () => {
    // Kept from the first release of the format: bytes that stop verifying here are records lost in the field.
    const kept: { head: typeof head; texts: string[] } = JSON.parse(
      readFileSync(new URL('./kept-log-v1.json', import.meta.url), 'utf8'),
    );
    expect(verdict(kept.texts, kept.head)).toEqual({ ok: kept.texts.length });
    // Held against Node's own SHA-256 without any code of ours: the text as it lies there, its hash member cut out.
    for (const text of kept.texts) {
      const [member, digest] = /"hash":"([0-9a-f]{64})",/.exec(text) ?? [];
      expect(nodeHash(text.replace(member ?? '', ''))).toBe(digest);
    }
  });
});

describe('a log that someone has been at', () => {
  test('any change of one character is found at its own entry, and all before it can still be read', () => {
    const places = texts.flatMap((text, index) => Array.from(text, (_, at) => ({ index, at })));
    fc.assert(
      fc.property(
        fc.constantFrom(...places),
        fc.string({ unit: 'binary', minLength: 0, maxLength: 2 }),
        fc.integer({ min: 0, max: 1 }),
        ({ index, at }, put, cut) => {
          const text = texts[index] ?? '';
          const edited = text.slice(0, at) + put + text.slice(at + cut);
          fc.pre(edited !== text);
          expect(verdict(texts.with(index, edited))).toMatchObject({ index, good: index });
        },
      ),
      { numRuns: tries(2000, 20_000), seed: SEED },
    );
  });

  test('every bit of every byte counts', () => {
    for (const [index, text] of texts.entries()) {
      for (let at = 0; at < text.length; at++) {
        const flipped = String.fromCharCode(text.charCodeAt(at) ^ (1 << (at % 7)));
        const edited = text.slice(0, at) + flipped + text.slice(at + 1);
        expect(verdict(texts.with(index, edited))).toMatchObject({ index, good: index });
      }
    }
  });

  test('an entry forged with a fitting hash is found at the next one', () => {
    const forged = seal(
      { kind: 'bolt-done', step: 'tighten-head', bolt: 3 },
      { ...JSON.parse(texts[2] ?? ''), v: 1 },
      nodeHash,
    ).sealed.text;
    expect(verdict(texts.with(2, forged))).toEqual({ index: 3, code: 'broken-chain', good: 3 });
  });

  test.each([
    ['an entry left out', texts.toSpliced(2, 1), { index: 2, code: 'gap', good: 2 }],
    ['the first left out', texts.slice(1), { index: 0, code: 'gap', good: 0 }],
    ['an entry twice', texts.toSpliced(2, 0, texts[1] ?? ''), { index: 2, code: 'gap', good: 2 }],
    ['two entries changed about', [0, 2, 1, 3, 4].map((at) => texts[at] ?? ''), { index: 1, code: 'gap', good: 1 }],
    [
      'the end of another job',
      [...texts.slice(0, 3), ...textsOf(sealedLog([...BODIES].reverse())).slice(3)],
      { index: 3, code: 'broken-chain', good: 3 },
    ],
  ])('%s', (_, given, found) => {
    expect(verdict(given, head)).toEqual(found);
  });

  test('a lost end shows only against the head that it is known to have reached', () => {
    expect(verdict(texts.slice(0, 4))).toEqual({ ok: 4 });
    expect(verdict(texts.slice(0, 4), head)).toEqual({ index: 4, code: 'cut-short', good: 4 });
  });
});
