import { describe, expect, test } from 'vitest';
import { base, inUnit } from '../../../src/core/fastening/quantity';
import { type StretchAction, type StretchRule, stretchVerdict } from '../../../src/core/fastening/stretch';

const rule = (name: string, least: number, most: number, ifUnder: StretchAction, source: string): StretchRule => ({
  name,
  source,
  window: { least: base<'length'>(least, 'in'), most: base<'length'>(most, 'in') },
  ifUnder,
  ifOver: 'replace',
});
const ROD_BOLT = rule('rod-bolt', 0.0135, 0.0185, 'slacken-and-retighten', 'US Army TM 55-1905-223-24-1');
const STUD = rule('stud', 0.019, 0.024, 'tighten-further', 'US Army TM 9-2815-220-24, WP 0174');

describe('stretch is tight less slack, judged by the document’s own rule', () => {
  test.each([
    [ROD_BOLT, 2.5, 2.513, 'under', 'slacken-and-retighten'],
    [ROD_BOLT, 2.5, 2.5135, 'within', null],
    [ROD_BOLT, 2.5, 2.516, 'within', null],
    [ROD_BOLT, 2.5, 2.5185, 'within', null],
    [ROD_BOLT, 2.5, 2.519, 'over', 'replace'],
    [STUD, 0, 0.018, 'under', 'tighten-further'],
    [STUD, 0, 0.022, 'within', null],
    [STUD, 0, 0.025, 'over', 'replace'],
  ] as const)('$name: %d to %d in is %s', (given, zero, tight, verdict, action) => {
    const found = stretchVerdict(base<'length'>(zero, 'in'), base<'length'>(tight, 'in'), given);
    expect(found).toMatchObject({ verdict, action });
    expect(inUnit<'length'>(found.stretch, 'in')).toBeCloseTo(tight - zero, 6);
  });

  test('a bolt that reads shorter tight than slack was measured wrongly, and is under', () => {
    expect(stretchVerdict(base<'length'>(2.5, 'in'), base<'length'>(2.49, 'in'), ROD_BOLT).verdict).toBe('under');
  });

  test('the window in millimetres is the printed one: 0.343-0.470', () => {
    expect(ROD_BOLT.window.least).toBeCloseTo(0.343, 3);
    expect(ROD_BOLT.window.most).toBeCloseTo(0.47, 3);
  });
});
