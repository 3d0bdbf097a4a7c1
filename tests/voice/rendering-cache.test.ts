import { expect, test } from 'vitest';
import type { Rendering, Utterance } from '../../src/voice/flite/flite';
import { keyOf, RenderingCache } from '../../src/voice/rendering-cache';

const rendering = (bytes: number): Rendering => ({ wav: new Uint8Array(bytes), ms: 0 });

test('the least lately used is forgotten first', () => {
  const cache = new RenderingCache(300);
  for (const key of ['a', 'b', 'c']) cache.keep(key, rendering(100));
  cache.get('a');
  cache.keep('d', rendering(100));
  expect(['a', 'b', 'c', 'd'].filter((key) => cache.get(key) !== undefined)).toEqual(['a', 'c', 'd']);
});

test('it never holds more bytes than it may, whatever their number and size', () => {
  const cache = new RenderingCache(1000);
  for (let i = 0; i < 500; i++) {
    cache.keep(`line ${i % 70}`, rendering((i * 37) % 400));
    expect(cache.bytes).toBeLessThanOrEqual(1000);
  }
});

test('keeping the same key again counts it once', () => {
  const cache = new RenderingCache(1000);
  cache.keep('a', rendering(400));
  cache.keep('a', rendering(300));
  expect(cache.bytes).toBe(300);
});

test.each<[string, Partial<Utterance>]>([
  ['another speaker', { speaker: 'rms' }],
  ['another pace', { rate: 1.2 }],
  ['other words', { text: 'Eight done.' }],
])('%s is another rendering', (_what, change) => {
  const said: Utterance = { text: 'Seven done.', speaker: 'slt', rate: 1 };
  expect(keyOf({ ...said, ...change })).not.toBe(keyOf(said));
});
