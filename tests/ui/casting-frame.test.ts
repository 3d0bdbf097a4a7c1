import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { FastenerMark, PatternDrawing } from '../../src/core/view/bench-view';
import { frameOf, growth, landmarkPlace } from '../../src/ui/bench/casting-frame';
import { afterHere, hereIn, marksInWords } from '../../src/ui/bench/fastener-words';

const MARKS: readonly FastenerMark[] = ['open', 'next', 'partial', 'done', 'unknown', 'held', 'idle'];

const point = fc.record({ x: fc.integer({ min: 0, max: 600 }), y: fc.integer({ min: 0, max: 400 }) });
const PLATE: Omit<PatternDrawing, 'fasteners'> = {
  say: 'plate',
  viewedFrom: 'above',
  outline: [
    { x: 0, y: 0 },
    { x: 600, y: 0 },
    { x: 600, y: 400 },
    { x: 0, y: 400 },
  ],
  landmarks: [],
};

const drawing = fc
  .uniqueArray(point, { minLength: 1, maxLength: 16, comparator: (a, b) => Math.hypot(a.x - b.x, a.y - b.y) < 25 })
  .chain((points) =>
    fc.array(fc.constantFrom(...MARKS), { minLength: points.length, maxLength: points.length }).map(
      (marks): PatternDrawing => ({
        ...PLATE,
        fasteners: points.map((at, i) => ({ number: i + 1, at, mark: marks[i] ?? 'open', turn: i + 1 })),
      }),
    ),
  );

describe('the drawing of a casting', () => {
  test('no two shapes touch, wherever the work is, unless they would be too small to read', () => {
    fc.assert(
      fc.property(drawing, (d) => {
        const { radius } = frameOf(d);
        const smallest = 600 / 30;
        for (const [i, a] of d.fasteners.entries())
          for (const b of d.fasteners.slice(i + 1)) {
            // The ring reaches 1.44 radii of an ordinary shape.
            const other = a.mark === 'idle' || b.mark === 'idle' ? growth('idle', false) : 1;
            const reach = radius * (1.44 + other);
            const apart = Math.hypot(a.at.x - b.at.x, a.at.y - b.at.y);
            expect(reach <= apart + 1e-9 || radius === smallest).toBe(true);
          }
      }),
    );
  });

  test('the sizes stay the same while the work moves from fastener to fastener', () => {
    fc.assert(
      fc.property(drawing, fc.nat(15), (d, i) => {
        const moved = { ...d, fasteners: d.fasteners.map((f, n) => (n === i ? { ...f, here: true } : f)) };
        expect(frameOf(moved)).toEqual(frameOf(d));
      }),
    );
  });

  test.each([
    ['on the left edge', { x: 0, y: 200 }, { turn: -90, anchor: 'middle' }],
    ['on the right edge', { x: 600, y: 200 }, { turn: 90, anchor: 'middle' }],
    ['on the top edge', { x: 300, y: 0 }, { turn: 0, anchor: 'middle' }],
    ['low on the left edge', { x: 0, y: 380 }, { turn: -90, anchor: 'start' }],
    ['high on the right edge', { x: 600, y: 20 }, { turn: 90, anchor: 'start' }],
    ['in the lower right corner', { x: 600, y: 400 }, { turn: 0, anchor: 'end' }],
  ])('a landmark %s stands outside the casting', (_name, at, place) => {
    const d: PatternDrawing = {
      ...PLATE,
      fasteners: [{ number: 1, at: { x: 300, y: 200 }, mark: 'open', turn: 1 }],
    };
    const found = landmarkPlace(d, at);
    expect(found).toMatchObject(place);
    expect(found.x < 0 || found.x > 600 || found.y < 0 || found.y > 400).toBe(true);
  });
});

const fastener = (number: number, mark: FastenerMark, turn: number | null) => ({
  number,
  at: { x: number * 30, y: 0 },
  mark,
  turn,
});

test('a landmark beside a fastener on the edge stands clear of its shape', () => {
  const d: PatternDrawing = {
    say: 'flange',
    viewedFrom: 'the nut side',
    outline: [],
    landmarks: [],
    fasteners: [0, 1, 2, 3].map((n) => ({
      number: n + 1,
      at: { x: 80 * Math.sin((n * Math.PI) / 2), y: -80 * Math.cos((n * Math.PI) / 2) },
      mark: 'open' as const,
      turn: n + 1,
    })),
  };
  const { radius, label } = frameOf(d);
  expect(landmarkPlace(d, { x: 0, y: -80 }).y + label / 2).toBeLessThan(-80 - radius);
});

describe('the marks in words', () => {
  const d: PatternDrawing = {
    say: 'head',
    viewedFrom: 'above',
    outline: [],
    landmarks: [],
    fasteners: [
      fastener(3, 'done', 1),
      fastener(1, 'done', 2),
      fastener(2, 'unknown', 3),
      fastener(4, 'next', 4),
      fastener(5, 'open', 6),
      fastener(6, 'open', 5),
      fastener(7, 'idle', null),
    ],
  };

  test('say what is next first, then what is in doubt, numbers in order', () => {
    expect(marksInWords(d)).toEqual([
      { word: 'mark-next', numbers: [4] },
      { word: 'mark-unknown', numbers: [2] },
      { word: 'mark-open', numbers: [5, 6] },
      { word: 'mark-done', numbers: [1, 3] },
      { word: 'mark-idle', numbers: [7] },
    ]);
  });

  test('the work is at what is next, and then goes by the order of the pass', () => {
    expect(hereIn(d)?.number).toBe(4);
    expect(afterHere(d)?.number).toBe(6);
  });

  test('the view may put the work on one that is not simply next', () => {
    const doubtful = { ...d, fasteners: d.fasteners.map((f) => (f.number === 2 ? { ...f, here: true } : f)) };
    expect(hereIn(doubtful)?.number).toBe(2);
  });

  test('after the last of the pass there is none', () => {
    const last = { ...d, fasteners: [fastener(4, 'next', 4), fastener(3, 'done', 1)] };
    expect(afterHere(last)).toBeUndefined();
  });
});
