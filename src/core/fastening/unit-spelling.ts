import { type Dimension, dimensionOf, isUnitName, UNIT_NAMES, type UnitName } from './unit';

/**
 * How manuals spell units, with separators, plurals and case removed. A spelling with several units behind it cannot
 * be told without asking: "pounds" on a torque is foot-pounds or inch-pounds, twelve times apart.
 */
const SPELLINGS: Readonly<Record<UnitName, string>> = {
  N·m: 'nm newtonmetre newtonmeter',
  lbf·ft: 'lbfft ftlbf lbft ftlb footpound poundfoot poundfeet footpoundforce poundforcefoot poundforcefeet lb pound',
  lbf·in: 'lbfin inlbf lbin inlb inchpound poundinch inchpoundforce poundforceinch lb pound',
  ozf·in: 'ozfin inozf ozin inoz inchounce ounceinch',
  kgf·m: 'kgfm mkgf kgm mkg kilogrammetre kilogrammeter kilogramforcemetre kilogramforcemeter',
  kgf·cm: 'kgfcm cmkgf kgcm cmkg',
  N: 'n newton',
  kN: 'kn kilonewton',
  lbf: 'lbf poundforce lb pound',
  kgf: 'kgf kilogramforce kp',
  mm: 'mm millimetre millimeter',
  cm: 'cm centimetre centimeter',
  m: 'm metre meter',
  um: 'um micron micrometre micrometer',
  in: 'in inch "',
  ft: 'ft foot feet',
  thou: 'thou thousandthofaninch',
  microinch: 'microinch uin microin',
  deg: 'deg degree °',
  turn: 'turn rev revolution',
  kPa: 'kpa kilopascal',
  MPa: 'mpa megapascal n/mm2',
  bar: 'bar',
  psi: 'psi lbf/in2 lb/in2 poundpersquareinch lb pound',
  ksi: 'ksi',
  'kgf/cm2': 'kgf/cm2 kg/cm2 kp/cm2',
  atm: 'atm atmosphere',
  inHg: 'inhg inchofmercury',
  degC: 'degc °c degreec degreecelsius celsius c',
  degF: 'degf °f degreef degreefahrenheit fahrenheit f',
  L: 'l litre liter',
  mL: 'ml millilitre milliliter cc cm3',
  'US gal': 'usgal usgallon gal gallon',
  'US qt': 'usqt usquart qt quart',
  'imp gal': 'impgal impgallon imperialgal imperialgallon ukgal gal gallon',
  'imp qt': 'impqt impquart imperialquart ukqt qt quart',
  kg: 'kg kilogram kilo',
  g: 'g gram',
  lb: 'lb pound',
  s: 's sec second',
  min: 'min minute',
  h: 'h hr hour',
  '%': '% percent',
  rpm: 'rpm rev/min r/min 1/min',
  V: 'v volt',
};

const BY_SPELLING: ReadonlyMap<string, readonly UnitName[]> = spelt();

function spelt(): Map<string, readonly UnitName[]> {
  const found = new Map<string, readonly UnitName[]>();
  for (const name of UNIT_NAMES)
    for (const spelling of SPELLINGS[name].split(' ')) found.set(spelling, [...(found.get(spelling) ?? []), name]);
  return found;
}

/**
 * The units that a printed unit can stand for: none if unknown, several if it must be asked. A dimension, where the
 * place in the document settles it, narrows the answer: "gal" stays two gallons, "lb" on a mass is one pound.
 */
export function unitsSpelt(text: string, within?: Dimension): readonly UnitName[] {
  const exact = text.trim();
  const candidates = isUnitName(exact) && exact !== 'lb' ? [exact] : (BY_SPELLING.get(plain(exact)) ?? []);
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

const singular = (word: string): string => {
  if (word.endsWith('inches')) return word.slice(0, -2);
  return word.length > 2 && word.endsWith('s') && word !== 'celsius' ? word.slice(0, -1) : word;
};
