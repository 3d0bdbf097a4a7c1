import { beforeAll, describe, expect, test } from 'vitest';
import { fliteForNode } from '../../../src/cli/flite-host';
import { secondsToSay, wordsOf } from '../../../src/core/phrasing/speaking-time';
import type { Flite } from '../../../src/voice/flite/flite';

let flite: Flite;
beforeAll(async () => {
  flite = await fliteForNode();
});

describe('the estimate against the default speaker itself', () => {
  test.each([
    'Seven done. Eight, rear, exhaust side.',
    'Torque wrench. Set forty newton meters. Say set at and the number.',
    'Bolt seven stays in doubt. Do not turn it. Say where its mark points, or check the manual.',
    'These figures are demonstration data. The maker’s own figures and local rules come first.',
    'Coolant is poisonous. Catch all of it and keep animals away.',
  ])('%s', (text) => {
    const rendered = flite.render({ text, speaker: 'slt', rate: 1 });
    if (!rendered.ok) throw new Error(rendered.error.detail);
    const estimated = secondsToSay(text);
    expect(Math.abs(estimated - rendered.value.ms / 1000)).toBeLessThan(0.6);
  });
});

test('twice the pace takes half the time, and nothing takes none', () => {
  expect(secondsToSay('All marked.', 2)).toBeCloseTo(secondsToSay('All marked.') / 2, 9);
  expect(secondsToSay('')).toBe(0);
});

test.each([
  ['', 0],
  ['Seven done. Eight, rear, exhaust side.', 6],
  ["What's next?", 2],
])('%j is %d words', (text, count) => {
  expect(wordsOf(text)).toBe(count);
});
