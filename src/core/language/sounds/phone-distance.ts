import type { Phone } from './lexicon';

/**
 * How unlike two phones sound through a noisy, band-limited ear: 0 for the same, 1 for nothing in common.
 *
 * Consonants are compared by the five features of Miller and Nicely (J. Acoust. Soc. Am. 27, 338-352, 1955): voicing,
 * nasality, affrication, duration, place. They found that noise and low-pass filtering leave voicing and nasality
 * nearly whole and destroy place first; the weights keep that order. The acoustic model ends at 3.7 kHz, so s, f, th
 * and m, n come out cheap. The feature values of their sixteen consonants are theirs (from memory), those of the
 * others are set alike; the weights are ours.
 *
 * Vowels are compared by the distance of their first two formants on the Bark scale, with the men's averages of
 * Peterson and Barney (J. Acoust. Soc. Am. 24, 175-184, 1952); a diphthong by its beginning and its end.
 */
export function phoneDistance(a: Phone, b: Phone): number {
  if (a === b) return 0;
  const [vowelA, vowelB] = [VOWELS[a], VOWELS[b]];
  if (vowelA && vowelB) return vowelDistance(vowelA, vowelB);
  const [consonantA, consonantB] = [CONSONANTS[a], CONSONANTS[b]];
  if (consonantA && consonantB) return consonantDistance(consonantA, consonantB);
  return NEAR_VOWEL.some(([glide, vowel]) => (a === glide && b === vowel) || (b === glide && a === vowel)) ? 0.4 : 1;
}

/** What it costs to hear a phone that was not said, or to miss one that was. Weak sounds come and go. */
export function gapCost(phone: Phone): number {
  if (VOWELS[phone]) return phone === 'AH' || phone === 'IH' ? 0.6 : 0.9;
  return WEAK.has(phone) ? 0.45 : 0.7;
}

const WEAK: ReadonlySet<Phone> = new Set<Phone>(['HH', 'T', 'D', 'P', 'B', 'K', 'G', 'F', 'TH', 'DH', 'N', 'M']);

/** Glides that are short forms of a vowel. */
const NEAR_VOWEL: readonly (readonly [Phone, Phone])[] = [
  ['R', 'ER'],
  ['W', 'UW'],
  ['W', 'UH'],
  ['Y', 'IY'],
  ['Y', 'IH'],
  ['L', 'OW'],
];

/** Voiced, nasal, affricate, long: 0 or 1. Place: 0 front, 1 middle, 2 back. Glide: made like a vowel, ours. */
type Features = readonly [voiced: number, nasal: number, affricate: number, long: number, place: number, glide: number];

const WEIGHTS: Features = [0.3, 0.4, 0.3, 0.15, 0.1, 0.4];
const LEAST_DIFFERENCE = 0.1;

const CONSONANTS: Readonly<Partial<Record<Phone, Features>>> = {
  P: [0, 0, 0, 0, 0, 0],
  T: [0, 0, 0, 0, 1, 0],
  K: [0, 0, 0, 0, 2, 0],
  F: [0, 0, 1, 0, 0, 0],
  TH: [0, 0, 1, 0, 1, 0],
  S: [0, 0, 1, 1, 1, 0],
  SH: [0, 0, 1, 1, 2, 0],
  B: [1, 0, 0, 0, 0, 0],
  D: [1, 0, 0, 0, 1, 0],
  G: [1, 0, 0, 0, 2, 0],
  V: [1, 0, 1, 0, 0, 0],
  DH: [1, 0, 1, 0, 1, 0],
  Z: [1, 0, 1, 1, 1, 0],
  ZH: [1, 0, 1, 1, 2, 0],
  M: [1, 1, 0, 0, 0, 0],
  N: [1, 1, 0, 0, 1, 0],
  // Not among the sixteen.
  NG: [1, 1, 0, 0, 2, 0],
  CH: [0, 0, 1, 0, 2, 0],
  JH: [1, 0, 1, 0, 2, 0],
  HH: [0, 0, 1, 0, 2, 0],
  L: [1, 0, 0, 0, 1, 1],
  R: [1, 0, 0, 0, 2, 1],
  W: [1, 0, 0, 0, 0, 1],
  Y: [1, 0, 1, 0, 2, 1],
};

function consonantDistance(a: Features, b: Features): number {
  const sum = WEIGHTS.reduce((total, weight, index) => total + weight * Math.abs((a[index] ?? 0) - (b[index] ?? 0)), 0);
  return Math.min(1, Math.max(LEAST_DIFFERENCE, sum));
}

type Formants = readonly [first: number, second: number];
type Vowel = { readonly from: Formants; readonly to: Formants };

const FORMANTS = {
  IY: [270, 2290],
  IH: [390, 1990],
  EH: [530, 1840],
  AE: [660, 1720],
  AA: [730, 1090],
  AO: [570, 840],
  UH: [440, 1020],
  UW: [300, 870],
  AH: [640, 1190],
  ER: [490, 1350],
} as const satisfies Partial<Record<Phone, Formants>>;

const steady = (formants: Formants): Vowel => ({ from: formants, to: formants });

const VOWELS: Readonly<Partial<Record<Phone, Vowel>>> = {
  IY: steady(FORMANTS.IY),
  IH: steady(FORMANTS.IH),
  EH: steady(FORMANTS.EH),
  AE: steady(FORMANTS.AE),
  AA: steady(FORMANTS.AA),
  AO: steady(FORMANTS.AO),
  UH: steady(FORMANTS.UH),
  UW: steady(FORMANTS.UW),
  AH: steady(FORMANTS.AH),
  ER: steady(FORMANTS.ER),
  EY: { from: FORMANTS.EH, to: FORMANTS.IY },
  AY: { from: FORMANTS.AA, to: FORMANTS.IH },
  OY: { from: FORMANTS.AO, to: FORMANTS.IH },
  AW: { from: FORMANTS.AA, to: FORMANTS.UH },
  OW: { from: FORMANTS.AO, to: FORMANTS.UW },
};

/** In Bark: as far as heed from hud. Vowels farther apart have nothing in common. */
const FARTHEST = 5;

function vowelDistance(a: Vowel, b: Vowel): number {
  const apart = (bark(a.from, b.from) + bark(a.to, b.to)) / 2;
  return Math.min(1, Math.max(LEAST_DIFFERENCE, apart / FARTHEST));
}

const bark = (a: Formants, b: Formants): number => Math.hypot(barkOf(a[0]) - barkOf(b[0]), barkOf(a[1]) - barkOf(b[1]));

/** Critical-band rate of a frequency in hertz; Traunmueller, J. Acoust. Soc. Am. 88, 97-100, 1990. */
const barkOf = (hertz: number): number => (26.81 * hertz) / (1960 + hertz) - 0.53;
