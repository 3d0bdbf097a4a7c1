import { gunzipSync } from 'node:zlib';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { wordsOfGraph, wordsOfTable } from '../../src/speech/vosk/symbol-table';
import { TONE_MODEL } from './archives';

/** The graph of words, with whatever of the archive follows it. */
const tar = gunzipSync(TONE_MODEL);
const graph = tar.subarray(tar.indexOf(Buffer.from([0xd6, 0xfd, 0xb2, 0x7e])));

test('a list of words is read line by line, and lines that are none are left out', () => {
  expect(wordsOfTable("<eps> 0\nstop 1\r\n\nwhat's 12\nno number\n3 4 5\n")).toEqual(['<eps>', 'stop', "what's"]);
});

test('the words of a graph come before its arcs, so its beginning is enough', () => {
  const words = wordsOfGraph(graph);
  expect(words).toHaveLength(20);
  expect(wordsOfGraph(graph.subarray(0, 500))).toEqual(words);
});

test('a graph cut within its words has none', () => {
  for (let length = 0; length < 400; length += 1) expect(wordsOfGraph(graph.subarray(0, length))).toBeNull();
});

test('no damage to it throws', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.nat(600), fc.nat(255)), { maxLength: 12 }), (changes) => {
      const copy = Uint8Array.from(graph);
      for (const [at, byte] of changes) copy[at] = byte;
      wordsOfGraph(copy);
    }),
    { seed: 5, numRuns: 2_000 },
  );
});
