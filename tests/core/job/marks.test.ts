import { describe, expect, test } from 'vitest';
import { markDegrees, markProof } from '../../../src/core/job/marks';
import type { Pass } from '../../../src/core/procedure/procedure';
import { joint } from './joint';

const passesOf = (...stages: Parameters<typeof joint>[0]): readonly Pass[] => {
  const [step] = joint(stages, 4).phases[0]?.steps ?? [];
  return step?.kind === 'tighten' ? step.passes : [];
};

const LARGE = [1, 2];
const SMALL = [3, 4];

describe('where a mark stands before and after a pass', () => {
  test.each([
    ['one angle', passesOf({ torque: 30 }, { angle: 90 }), 1, 0, 90],
    ['a second angle goes on from the first', passesOf({ angle: 90 }, { angle: 90 }), 1, 90, 180],
    ['four quarters bring it home', passesOf({ angle: 90 }, { angle: 90 }, { angle: 90 }, { angle: 90 }), 3, 270, 0],
    ['a torque between makes new marks', passesOf({ angle: 90 }, { torque: 30 }, { angle: 90 }), 2, 0, 90],
    ['a slackening between makes new marks', passesOf({ angle: 90 }, { slacken: 360 }, { angle: 60 }), 2, 0, 60],
    ['a wait between leaves them', passesOf({ angle: 90 }, { wait: 'settling' }, { angle: 90 }), 2, 90, 180],
    [
      'work on other fasteners between leaves them',
      passesOf({ angle: 90, of: LARGE }, { torque: 12, of: SMALL }, { angle: 60, of: LARGE }),
      2,
      90,
      150,
    ],
    [
      'angles of other fasteners do not count',
      passesOf({ angle: 90, of: LARGE }, { angle: 45, of: SMALL }, { angle: 60, of: LARGE }),
      2,
      90,
      150,
    ],
  ])('%s', (_, passes, index, before, after) => {
    expect(markDegrees(passes, index)).toEqual({ before, after });
  });
});

// A clock hour is 30 degrees; a mark named by the full hour is read to half of that.
describe('what a mark proves', () => {
  const once = passesOf({ torque: 30 }, { angle: 90 });
  const twice = passesOf({ angle: 90 }, { angle: 90 });
  const small = passesOf({ angle: 45 });
  const round = passesOf({ angle: 360 });
  const slight = passesOf({ angle: 30 });
  test.each([
    ['where this pass leaves it: turned', once, 1, 3, 0, { kind: 'turned' }],
    ['where it was: not turned', once, 1, 12, 0, { kind: 'not-turned' }],
    ['beyond: nothing', once, 1, 5, 0, { kind: 'elsewhere' }],
    ['before the beginning: nothing', once, 1, 10, 0, { kind: 'elsewhere' }],
    ['between: so much as the hour says', once, 1, 2, 0, { kind: 'partly-turned', degrees: 60 }],
    ['between, near what was told: that much', once, 1, 1, 45, { kind: 'partly-turned', degrees: 45 }],
    ['between, far from what was told: what the hour says', once, 1, 2, 20, { kind: 'partly-turned', degrees: 60 }],
    ['the mark of the first angle proves nothing done in the second', twice, 1, 3, 0, { kind: 'not-turned' }],
    ['the second angle done', twice, 1, 6, 0, { kind: 'turned' }],
    ['half past one is named by either hour', small, 0, 1, 0, { kind: 'turned' }],
    ['half past one is named by either hour', small, 0, 2, 0, { kind: 'turned' }],
    ['a whole turn comes back to where it was: nothing', round, 0, 12, 0, { kind: 'cannot-tell' }],
    ['an hour apart is too little to tell', slight, 0, 1, 0, { kind: 'cannot-tell' }],
  ])('%s', (_, passes, index, hour, had, proof) => {
    expect(markProof(passes, index, hour, had)).toEqual(proof);
  });
});
