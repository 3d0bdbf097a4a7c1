import { describe, expect, test } from 'vitest';
import { patternSvg } from '../../../src/core/drawing/pattern-svg';
import type { Pattern } from '../../../src/core/procedure/procedure';
import { shipped } from '../job/workbench';

const WORDS = { title: 'A lid', viewedFrom: 'View: above.', order: 'Order:', generated: 'By rule.' };

function patternOf(document: string, id: string): Pattern {
  const pattern = shipped(document).patterns.get(id);
  if (!pattern) throw new Error(`no pattern ${id}`);
  return pattern;
}

const head = patternOf('tarnbeck-head-gasket', 'head-left');
const large = Array.from({ length: 10 }, (_, index) => index + 1);
const svg = patternSvg(head, { numbers: large, generated: false }, WORDS);

const shown = (drawing: string): readonly string[] =>
  [...drawing.matchAll(/<text [^>]*>([^<]*)<\/text>/g)].map(([, words = '']) => words);

/** Centres and radii of the circles drawn for fasteners; the double ring of the first is wider. */
const circles = (drawing: string) =>
  [...drawing.matchAll(/<circle cx="([^"]+)" cy="([^"]+)" r="([^"]+)" fill="#fff"/g)].map(([, x, y, r]) => ({
    x: Number(x),
    y: Number(y),
    r: Number(r),
  }));

describe('the drawing of a pattern', () => {
  test('has every number once, every landmark, and the captions', () => {
    expect(
      shown(svg)
        .filter((words) => /^\d+$/.test(words))
        .map(Number)
        .sort((a, b) => a - b),
    ).toEqual(head.fasteners.map(({ number }) => number));
    for (const words of [
      ...head.landmarks.map(({ say }) => say),
      'A lid',
      'View: above.',
      'Order: 1 2 3 4 5 6 7 8 9 10',
    ])
      expect(shown(svg)).toContain(words);
    expect(shown(svg)).not.toContain('By rule.');
  });

  test('has each fastener where the document puts it', () => {
    expect(circles(svg).map(({ x, y }) => `${x} ${y}`)).toEqual(head.fasteners.map(({ at }) => `${at.x} ${at.y}`));
  });

  test('has the outline, and the path in the order', () => {
    expect(svg).toContain('<polygon points="0,-10 420,-10 420,225 0,225"');
    const places = large.map((number) => head.fasteners.find((one) => one.number === number)?.at);
    expect(svg).toContain(`<polyline points="${places.map((at) => `${at?.x},${at?.y}`).join(' ')}"`);
  });

  test('gives the turn beside the number, and dashes what is not in the order', () => {
    expect(shown(svg).filter((words) => /^\d+\.$/.test(words))).toEqual(
      head.fasteners.filter(({ number }) => number <= 10).map(({ number }) => `${large.indexOf(number) + 1}.`),
    );
    expect(svg.match(/stroke-dasharray/g)).toHaveLength(4);
  });

  test('says so when the order was worked out by rule, and draws none where there is none', () => {
    expect(patternSvg(head, { numbers: large, generated: true }, WORDS)).toContain('By rule.');
    expect(patternSvg(head, null, WORDS)).not.toContain('<polyline');
  });

  test('escapes what a document says', () => {
    const sly = { ...head, landmarks: [{ say: '<b>&"', at: { x: 0, y: 0 } }] };
    expect(patternSvg(sly, null, { ...WORDS, title: '</svg><script>' })).not.toMatch(/<b>|<script>/);
  });
});

describe.each(['tarnbeck-head-gasket', 'flange-eight-bolt', 'wheel-five-stud', 'practice-plate'])(
  'in %s',
  (document) => {
    test.each([...shipped(document).patterns.keys()])(
      '%s: no two fasteners touch, and all lie in the picture',
      (id) => {
        const drawing = patternSvg(patternOf(document, id), null, WORDS);
        const [left = 0, top = 0, width = 0, height = 0] = (/viewBox="([^"]+)"/.exec(drawing)?.[1] ?? '')
          .split(' ')
          .map(Number);
        const drawn = circles(drawing);
        for (const [index, a] of drawn.entries()) {
          expect(a.x - a.r >= left && a.x + a.r <= left + width && a.y - a.r >= top && a.y + a.r <= top + height).toBe(
            true,
          );
          for (const b of drawn.slice(index + 1)) expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThan(a.r + b.r);
        }
      },
    );
  },
);
