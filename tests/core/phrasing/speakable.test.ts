import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { respelt, speakable } from '../../../src/core/phrasing/speakable';
import { englishBook } from './english';

const { words } = englishBook();
const said = (text: string) => speakable(text, words);

describe('document text as it is said (common practice)', () => {
  test.each([
    ['Lift the head straight up.', 'Lift the head straight up.'],
    ['Torque to 40 N·m (29.5 lbf·ft).', 'Torque to forty newton metres, twenty nine point five foot pounds.'],
    ['22 ft-lb, 22 ft lb, 22 lb-ft', 'twenty two foot pounds, twenty two foot pounds, twenty two foot pounds'],
    ['264 in-lb', 'two hundred and sixty four inch pounds'],
    ['Fit the M10x1.5 bolts', 'Fit the M ten by one point five bolts'],
    ['3/8 in drive', 'three eighths inch drive'],
    ['a 15 mm socket, a 15-mm socket', 'a fifteen millimetre socket, a fifteen millimetre socket'],
    ['1 1/2 in long, 1½ in long', 'one and one half inches long, one and one half inches long'],
    ['½ turn', 'one half turn'],
    ['Set 4 in each side', 'Set four in each side'],
    ['a 12 in span', 'a twelve inches span'],
    ['0.040" or 3/8"', 'zero point zero four zero inches or three eighths inch'],
    ['85–95°, then 90 ± 5 deg', 'eighty five to ninety five degrees, then ninety plus or minus five degrees'],
    ['10-15 s bursts', 'ten to fifteen second bursts'],
    ['Below -5 °C', 'Below minus five degrees Celsius'],
    ['5W-30, 4.5 L', 'five W thirty, four point five litres'],
    ['25 µm, 25 μm', 'twenty five microns, twenty five microns'],
    ['12 kgf/cm²', 'twelve kilograms per square centimetre'],
    ['4.5 L (4.8 US qt)', 'four point five litres, four point eight American quarts'],
    ['the value in N·m', 'the value in newton metres'],
    ['0,05 mm', 'zero point zero five millimetres'],
    ['12,500 km', 'twelve thousand five hundred kilometres'],
    ['bolts 1,2,3', 'bolts one, two, three'],
    ['bolts 1-6', 'bolts one to six'],
    ['No. 2 cyl.: 165 psi', 'number two cylinder: one hundred and sixty five P S I'],
    ['No. Leave it.', 'No. Leave it.'],
    ['wait 5 min. Then go', 'wait five minutes. Then go'],
    ['24 h at 20 °C', 'twenty four hours at twenty degrees Celsius'],
    ['a 50:50 mix', 'a fifty to fifty mix'],
    ['V6, 32V6', 'V six, thirty two V six'],
    ['PCV valve & TDC mark', 'P C V valve and top dead centre mark'],
    ['the 2nd time', 'the second time'],
    ['Read the “push-rod” — twice', 'Read the push rod, twice'],
    ["the lifters' bores, don't", "the lifters bores, don't"],
    ['and/or', 'and or'],
    ['inlet/exhaust', 'inlet or exhaust'],
    ['', ''],
    ['***', ''],
  ])('%j', (text, spoken) => {
    expect(said(text)).toBe(spoken);
  });

  test('control and direction characters are gone', () => {
    expect(said('bolt\u0007 seven\n\tdone\u202e.')).toBe('bolt seven done.');
  });
});

describe('of any text', () => {
  const piece = fc.oneof(
    fc.string({ unit: 'binary' }),
    fc.constantFrom('40', ' N·m', '0.05', ' mm', '-', '1/2', '"', '°', '12,500', ' in ', 'M10', '±', '.', '%', '½'),
  );
  const text = fc.array(piece, { maxLength: 8 }).map((pieces) => pieces.join(''));

  test('what is said holds letters and plain stops only', () => {
    fc.assert(
      fc.property(text, (t) => {
        expect(said(t)).toMatch(/^[\p{L}\p{M} .,;:?!']*$/u);
      }),
    );
  });

  test('no figure is ever dropped', () => {
    fc.assert(
      fc.property(text, fc.integer({ min: 0, max: 999 }), text, (before, n, after) => {
        const lone = said(`${before} | ${n} | ${after}`);
        expect(lone).toContain(said(String(n)));
      }),
    );
  });

  test('what is said already stays as it is', () => {
    fc.assert(
      fc.property(text, (t) => {
        expect(said(said(t))).toBe(said(t));
      }),
    );
  });
});

test('words that the embedded voice misreads are respelt, and their neighbours are not', () => {
  expect(respelt('Read the plug lead, forty newton metres', words)).toBe('Reed the plug leed, forty newton meters');
  expect(respelt('the leading edge, already read', words)).toBe('the leading edge, already read');
  expect(respelt('clear them and read once more', words)).toBe('clear them and reed once more');
});
