import { describe, expect, test } from 'vitest';
import { millimetres } from '../../../src/core/fastening/quantity';
import { type RemovalLimit, removalVerdict } from '../../../src/core/measuring/metal-removed';

const cut = (face: string, depth: number) => ({ face, depth: millimetres(depth) });
const TOGETHER: RemovalLimit = {
  name: 'head and block together',
  whose: 'common practice; makers differ',
  most: millimetres(0.2),
  faces: ['head', 'block'],
};

describe('metal off head and block shares one budget of 0.20 mm (common practice)', () => {
  test.each([
    ['nothing yet', [], 0, 0.2, 0],
    ['head only', [cut('head', 0.08)], 0.08, 0.12, 0],
    [
      'twice the head, once the block: exactly used up',
      [cut('head', 0.1), cut('block', 0.05), cut('head', 0.05)],
      0.2,
      0,
      0,
    ],
    ['over', [cut('head', 0.15), cut('block', 0.1)], 0.25, 0, 0.05],
    ['another face does not count', [cut('manifold', 0.3)], 0, 0.2, 0],
  ])('%s', (_, cuts, removed, left, over) => {
    expect(removalVerdict(cuts, TOGETHER)).toEqual({ removed, left, over });
  });
});
