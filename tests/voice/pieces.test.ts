import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fliteForNode } from '../../src/cli/flite-host';
import { readTongue } from '../../src/cli/tongue-files';
import { estimatedMs, halves, LONGEST_STRETCH_MS, pieces } from '../../src/voice/pieces';

const { breath } = readTongue('en');

describe('where a long reply is broken', () => {
  test.each([
    { why: 'a short reply stays whole', text: 'Seven done. Eight, rear, exhaust side.', at: [] },
    {
      why: 'between sentences first',
      text: 'Warning. The coolant is hot. Do not open the cap until the engine is cold.',
      at: ['Warning. The coolant is hot.', 'Do not open the cap until the engine is cold.'],
    },
    {
      why: 'between clauses when the sentence is long',
      text: 'Pass three of four, angle, ninety degrees, each bolt in order as on the casting.',
      at: ['Pass three of four, angle, ninety degrees,', 'each bolt in order as on the casting.'],
    },
    {
      why: 'before a joining word when there is no stop at all',
      text: 'Lift the head straight up with the hoist and set it down on two clean blocks of wood',
      at: ['Lift the head straight up with the hoist', 'and set it down on two clean blocks of wood'],
    },
    {
      why: 'not inside a figure when any other space will do',
      text: 'Tighten every one of the long centre bolts to forty newton metres dry threads only',
      at: ['Tighten every one of the long centre bolts', 'to forty newton metres dry threads only'],
    },
  ])('$why', ({ text, at }) => {
    expect(pieces(text, 1, breath)).toEqual(at.length === 0 ? [text] : at);
  });

  test('a slow pace makes more pieces', () => {
    const text = 'Seven done, in order. Eight, rear, exhaust side.';
    expect([pieces(text, 1).length, pieces(text, 0.6).length]).toEqual([1, 2]);
  });

  test.each(['', '   '])('%j has nothing to say', (text) => expect(pieces(text)).toEqual([]));
});

const words = fc.array(fc.stringMatching(/^[a-z]{1,12}[.,;]?$/), { maxLength: 60 });

test('no word is lost, and no piece is estimated over the limit unless it is one word', () => {
  fc.assert(
    fc.property(words, fc.double({ min: 0.5, max: 2, noNaN: true }), (all, rate) => {
      const cut = pieces(all.join(' '), rate);
      expect(cut.join(' ')).toBe(all.join(' '));
      for (const piece of cut) {
        expect(!piece.includes(' ') || estimatedMs(piece, rate) <= LONGEST_STRETCH_MS).toBe(true);
      }
    }),
  );
});

test('halving always ends', () => {
  fc.assert(
    fc.property(words, (all) => {
      const [first, second] = halves(all.join(' ')) ?? [];
      if (all.length < 2) expect(first).toBeUndefined();
      else expect([first, second].join(' ')).toBe(all.join(' '));
    }),
  );
});

// The estimate only plans; what Flite takes is what counts. Within a quarter of it, or pieces would be halved needlessly.
test.each([
  'Set the wrench to forty newton metres and say set at forty.',
  'Caution. This gasket is single use: fit a new one, dry, with the mark to the front.',
  'Still off: the thermostat housing, two heater hoses, and the crank sensor plug.',
])('the estimate fits the default speaker for %j', async (text) => {
  const rendered = (await fliteForNode()).render({ text, speaker: 'slt', rate: 1 });
  const share = rendered.ok ? rendered.value.ms / estimatedMs(text) : 0;
  expect(share).toBeGreaterThan(0.75);
  expect(share).toBeLessThan(1.25);
});
