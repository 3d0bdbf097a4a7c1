import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

const THEME = join(import.meta.dirname, '../../src/ui/theme');

/** Contrast of two colours: WCAG 2.2, definitions of "contrast ratio" and "relative luminance". */
function contrast(a: string, b: string): number {
  const luminance = (hex: string): number => {
    const [r = 0, g = 0, blue = 0] = [1, 3, 5].map((i) => {
      const c = Number.parseInt(hex.slice(i, i + 2), 16) / 255;
      return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * blue;
  };
  const [lighter = 0, darker = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (lighter + 0.05) / (darker + 0.05);
}

test.each([
  ['#000000', 21.0],
  ['#595959', 7.005],
  ['#767676', 4.542],
  ['#777777', 4.478],
])('the measure itself: %s on white is %s', (colour, ratio) => {
  expect(contrast(colour, '#ffffff')).toBeCloseTo(ratio, 2);
});

const css = readFileSync(join(THEME, 'theme.css'), 'utf8');
const colours = new Map(
  [...css.matchAll(/--([a-z-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)/g)].map((m) => [
    m[1] ?? '',
    { day: m[2] ?? '', dim: m[3] ?? '' },
  ]),
);

const colour = (name: string) => {
  const found = colours.get(name);
  if (!found) throw new Error(`no colour ${name}`);
  return found;
};

// WCAG 2.2, 1.4.6 (AAA): 7:1 for text of any size.
describe.each(['day', 'dim'] as const)('the %s theme', (theme) => {
  test.each([
    ['ink', 'paper'],
    ['ink', 'sheet'],
    ['quiet', 'paper'],
    ['quiet', 'sheet'],
    ['paper', 'ink'],
    ['on-here', 'here'],
    ['here', 'paper'],
    ['on-warning', 'warning'],
    ['on-caution', 'caution'],
  ])('%s on %s is at least 7 to 1', (text, ground) => {
    expect(contrast(colour(text)[theme], colour(ground)[theme])).toBeGreaterThanOrEqual(7);
  });

  // WCAG 2.2, 1.4.11: 3:1 for what tells a control or a shape.
  test.each([
    ['rule', 'paper'],
    ['here', 'sheet'],
    ['ink', 'sheet'],
  ])('%s on %s is at least 3 to 1', (edge, ground) => {
    expect(contrast(colour(edge)[theme], colour(ground)[theme])).toBeGreaterThanOrEqual(3);
  });
});

describe('sizes on a ten-inch tablet of 1280 by 800', () => {
  const scale = readFileSync(join(THEME, 'scale.css'), 'utf8').split('@media')[0] ?? '';
  const declared = (name: string): string => scale.match(new RegExp(`--${name}: ([^;]+);`))?.[1] ?? '';
  const factor = (name: string, of: string): number =>
    Number(declared(name).match(new RegExp(`^calc\\(([0-9.]+) \\* var\\(--${of}\\)\\)$`))?.[1]);

  test('a millimetre is a real one', () => {
    const perInch = Math.hypot(1280, 800) / 10;
    expect(Number(declared('mm').match(/([0-9.]+)px/)?.[1])).toBeCloseTo(perInch / 25.4, 2);
  });

  test('letters are sized by their capitals, seven tenths of the font size', () => {
    expect(declared('cap')).toBe('calc(var(--mm) / 0.7)');
  });

  test.each([
    ['text-value', 'cap', 12],
    ['text-line', 'cap', 6],
  ])('%s is at least so many millimetres', (name, of, least) => {
    expect(factor(name, of)).toBeGreaterThanOrEqual(least);
  });

  test('a button is at least 22 millimetres, whatever the size of the text', () => {
    expect(declared('button')).toBe('calc(22 * 5.94px)');
  });
});
