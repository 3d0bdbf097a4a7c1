import { expect, test } from 'vitest';
import { type Before, pauseBefore } from '../../src/voice/pause';

const NEVER_HELD = Number.NEGATIVE_INFINITY;
const ORDINARY: Before = {
  priority: 'normal',
  first: false,
  pieceMs: 1000,
  stretchMs: 1000,
  silentMs: 0,
  heldMs: NEVER_HELD,
};

// Four seconds of talk at most before the ear gets its turn: the safety rule of the product.
test.each([
  { rule: 'talk goes on while it is short', before: {}, ms: 0 },
  { rule: 'at exactly four seconds it still does', before: { stretchMs: 3000 }, ms: 0 },
  { rule: 'past four seconds the ear gets 600 ms first', before: { stretchMs: 3001 }, ms: 600 },
  { rule: 'silence already kept counts', before: { stretchMs: 3500, silentMs: 250 }, ms: 350 },
  { rule: 'one long piece after a silence needs no second one', before: { stretchMs: 0, pieceMs: 4500 }, ms: 0 },
  { rule: 'a person speaking is let finish', before: { heldMs: 1800 }, ms: 1800 },
  { rule: 'the longer of gap and hold counts', before: { stretchMs: 3500, heldMs: 200 }, ms: 600 },
  {
    rule: 'urgent speech opens at once',
    before: { priority: 'urgent', first: true, stretchMs: 3900, heldMs: 900 },
    ms: 0,
  },
  { rule: 'long urgent speech leaves gaps too', before: { priority: 'urgent', stretchMs: 3900 }, ms: 600 },
  { rule: 'but is not held', before: { priority: 'urgent', heldMs: 900 }, ms: 0 },
] as const)('$rule', ({ before, ms }) => {
  expect(pauseBefore({ ...ORDINARY, ...before })).toBe(ms);
});
