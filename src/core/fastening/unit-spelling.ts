import { type Dimension, dimensionOf, isUnitName, UNIT_NAMES, type UnitName } from './unit';

/**
 * How manuals of any language print the symbols of units, with separators, plurals and case removed. A spelling with
 * several units behind it cannot be told without asking: "lb" on a torque is foot-pounds or inch-pounds, twelve times
 * apart. Units written out are words of a language: its grammars/<language>/wording.yaml has them.
 */
const SYMBOLS: Readonly<Record<UnitName, string>> = {
  N·m: 'nm',
  lbf·ft: 'lbfft ftlbf lbft ftlb lb',
  lbf·in: 'lbfin inlbf lbin inlb lb',
  ozf·in: 'ozfin inozf ozin inoz',
  kgf·m: 'kgfm mkgf kgm mkg',
  kgf·cm: 'kgfcm cmkgf kgcm cmkg',
  N: 'n',
  kN: 'kn',
  lbf: 'lbf lb',
  kgf: 'kgf kp',
  mm: 'mm',
  cm: 'cm',
  m: 'm',
  um: 'um',
  in: 'in "',
  ft: 'ft',
  thou: 'thou',
  microinch: 'microinch uin microin',
  deg: 'deg °',
  turn: 'turn rev',
  kPa: 'kpa',
  MPa: 'mpa n/mm2',
  bar: 'bar',
  psi: 'psi lbf/in2 lb/in2 lb',
  ksi: 'ksi',
  'kgf/cm2': 'kgf/cm2 kg/cm2 kp/cm2',
  atm: 'atm',
  inHg: 'inhg',
  degC: 'degc °c c',
  degF: 'degf °f f',
  L: 'l',
  mL: 'ml cc cm3',
  'US gal': 'usgal gal',
  'US qt': 'usqt qt',
  'imp gal': 'impgal ukgal gal',
  'imp qt': 'impqt ukqt qt',
  kg: 'kg',
  g: 'g',
  lb: 'lb',
  s: 's sec',
  min: 'min',
  h: 'h hr',
  '%': '%',
  rpm: 'rpm rev/min r/min 1/min',
  V: 'v',
};

/** Units by a spelling. */
export type UnitNames = ReadonlyMap<string, readonly UnitName[]>;

const BY_SYMBOL: UnitNames = spelt(UNIT_NAMES.map((name) => [name, SYMBOLS[name].split(' ')] as const));

/** The names of units as a language writes them out. */
export const unitNames = (names: Readonly<Partial<Record<UnitName, readonly string[]>>>): UnitNames =>
  spelt(UNIT_NAMES.map((name) => [name, [...new Set((names[name] ?? []).map(plain))]] as const));

function spelt(all: readonly (readonly [UnitName, readonly string[]])[]): UnitNames {
  const found = new Map<string, readonly UnitName[]>();
  for (const [name, spellings] of all)
    for (const spelling of spellings) found.set(spelling, [...(found.get(spelling) ?? []), name]);
  return found;
}

/**
 * The units that a printed unit can stand for: none if unknown, several if it must be asked. A dimension, where the
 * place in the document settles it, narrows the answer: "gal" stays two gallons, "lb" on a mass is one pound. `named`
 * are the names that the language of the document has for units.
 */
export function unitsSpelt(text: string, within?: Dimension, named?: UnitNames): readonly UnitName[] {
  const exact = text.trim();
  const candidates =
    isUnitName(exact) && exact !== 'lb' ? [exact] : (BY_SYMBOL.get(plain(exact)) ?? named?.get(plain(exact)) ?? []);
  const fitting = within ? candidates.filter((name) => dimensionOf(name) === within) : candidates;
  // A unit of another dimension is known, and said to be wrong by the caller rather than unknown.
  return fitting.length > 0 ? fitting : candidates;
}

function plain(text: string): string {
  return text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[μµ]/g, 'u')
    .replace(/[”″]|''/g, '"')
    .replace(/[º˚]/g, '°')
    .split(/[\s·•⋅∙×*.\u2010-\u2015\u2212-]+/)
    .map(singular)
    .join('');
}

/** Symbols are short: what is longer and ends in "s" is a plural, and a name that ends so is read the same way. */
const singular = (word: string): string => (word.length > 2 && word.endsWith('s') ? word.slice(0, -1) : word);
