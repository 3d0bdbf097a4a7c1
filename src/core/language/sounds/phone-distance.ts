import type { Features, Formants, Phone, Sounds, Vowel } from './sounds';

/** How unlike two phones of a language are, and what it costs to miss one. */
export type PhoneDistance = {
  /**
   * How unlike two phones sound through a noisy, band-limited ear: 0 for the same, 1 for nothing in common.
   *
   * Consonants are compared by the five features of Miller and Nicely (J. Acoust. Soc. Am. 27, 338-352, 1955): voicing,
   * nasality, affrication, duration, place. They found that noise and low-pass filtering leave voicing and nasality
   * nearly whole and destroy place first; the weights keep that order and are ours. The acoustic models end at 3.7 kHz,
   * so s, f, th and m, n come out cheap.
   *
   * Vowels are compared by the distance of their first two formants on the Bark scale, a diphthong by its beginning and
   * its end; nasality weighs as much as it does between consonants.
   */
  readonly between: (a: Phone, b: Phone) => number;
  /** What it costs to hear a phone that was not said, or to miss one that was. Weak sounds come and go. */
  readonly gap: (phone: Phone) => number;
};

export function phoneDistance({ consonants, vowels, glides, weak, swallowed }: Sounds): PhoneDistance {
  const isGlide = (a: Phone, b: Phone): boolean =>
    glides.some(([glide, vowel]) => (a === glide && b === vowel) || (b === glide && a === vowel));
  const between = (a: Phone, b: Phone): number => {
    if (a === b) return 0;
    const [vowelA, vowelB] = [vowels.get(a), vowels.get(b)];
    if (vowelA && vowelB) return vowelDistance(vowelA, vowelB);
    const [consonantA, consonantB] = [consonants.get(a), consonants.get(b)];
    if (consonantA && consonantB) return consonantDistance(consonantA, consonantB);
    return isGlide(a, b) ? 0.4 : 1;
  };
  const gap = (phone: Phone): number => {
    if (vowels.has(phone)) return swallowed.has(phone) ? 0.6 : 0.9;
    return weak.has(phone) ? 0.45 : 0.7;
  };
  return { between, gap };
}

const NASALITY = 0.4;
const WEIGHTS: Features = [0.3, NASALITY, 0.3, 0.15, 0.1, 0.4];
const LEAST_DIFFERENCE = 0.1;

function consonantDistance(a: Features, b: Features): number {
  const sum = WEIGHTS.reduce((total, weight, index) => total + weight * Math.abs((a[index] ?? 0) - (b[index] ?? 0)), 0);
  return Math.min(1, Math.max(LEAST_DIFFERENCE, sum));
}

/** In Bark: as far as heed from hud. Vowels farther apart have nothing in common. */
const FARTHEST = 5;

function vowelDistance(a: Vowel, b: Vowel): number {
  const apart = (bark(a.from, b.from) + bark(a.to, b.to)) / 2;
  const nose = a.isNasal === b.isNasal ? 0 : NASALITY;
  return Math.min(1, Math.max(LEAST_DIFFERENCE, apart / FARTHEST + nose));
}

const bark = (a: Formants, b: Formants): number => Math.hypot(barkOf(a[0]) - barkOf(b[0]), barkOf(a[1]) - barkOf(b[1]));

/** Critical-band rate of a frequency in hertz; Traunmueller, J. Acoust. Soc. Am. 88, 97-100, 1990. */
const barkOf = (hertz: number): number => (26.81 * hertz) / (1960 + hertz) - 0.53;
