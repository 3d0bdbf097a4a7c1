import { type Forms, type FractionWords, type NumberWords, put } from './speech-words';

/** A whole number in words, by the tables of the language. Beyond its largest scale it is said digit by digit. */
export function cardinal(n: number, words: NumberWords): string {
  const [largest] = words.scales;
  if (!Number.isSafeInteger(n) || n < 0 || n >= (largest?.worth ?? 0.1) * 1000) return digitByDigit(String(n), words);
  const small = words.belowHundred[n];
  if (small !== undefined) return small;
  const scale = words.scales.find((s) => s.worth <= n);
  if (!scale) return digitByDigit(String(n), words);
  const many = Math.floor(n / scale.worth);
  const rest = n % scale.worth;
  const head = many === 1 ? scale.one : put(scale.many, { n: cardinal(many, words) });
  return rest === 0 ? head : head + (rest < 100 ? scale.smallJoint : scale.joint) + cardinal(rest, words);
}

/**
 * Digit by digit, with the point as a word: "122.1" is "one two two point one" (FAA AIM 4-2-8; the same in ICAO
 * practice). For reading a number back, where "fifty" and "fifteen" must not be taken for each other.
 */
export function digitByDigit(figures: string, words: NumberWords): string {
  return [...figures]
    .map((c) => (c === '-' ? words.minus : c === '.' ? words.point : (words.digits[Number(c)] ?? '')))
    .filter((word) => word !== '')
    .join(' ');
}

/** More figures than this are a serial number. */
const LONGEST_CARDINAL = 9;

/** A number as people say it: the whole part as one number, the decimals digit by digit. `figures` is "-12.05". */
export function numberWords(figures: string, words: NumberWords): string {
  const [whole = '', ...decimals] = figures.replace('-', '').split('.');
  const isSpelled = /^0\d/.test(whole) || whole.length > LONGEST_CARDINAL;
  return [
    ...(figures.startsWith('-') ? [words.minus] : []),
    whole === '' ? digitByDigit('0', words) : isSpelled ? digitByDigit(whole, words) : cardinal(Number(whole), words),
    ...decimals.flatMap((part) => [words.point, digitByDigit(part, words)]),
  ].join(' ');
}

/** One printed number: "0.05", "0,05", "12,500", "1 1/2", "3/8", "-37". A lone comma is a decimal sign unless three digits follow. */
export function printedNumberWords(printed: string, words: NumberWords, fractions: FractionWords): string {
  const fraction = /^(-?)(?:(\d+)[ -])?(\d+)\/(\d+)$/.exec(printed);
  if (!fraction) return numberWords(plainFigures(printed, words), words);
  const [, sign, whole, top = '', bottom = ''] = fraction;
  const part = fractionWords(Number(top), Number(bottom), words, fractions);
  const said = whole === undefined ? part : put(fractions.mixed, { whole: cardinal(Number(whole), words), part });
  return sign === '-' ? `${words.minus} ${said}` : said;
}

function fractionWords(top: number, bottom: number, words: NumberWords, fractions: FractionWords): string {
  const named = fractions.bottoms.get(bottom);
  const topWords = cardinal(top, words);
  return named
    ? put(fractions.part, { top: topWords, bottom: top === 1 ? named.one : named.many })
    : put(fractions.other, { top: topWords, bottom: cardinal(bottom, words) });
}

function plainFigures(printed: string, { thousandsSign }: NumberWords): string {
  const text = printed.replaceAll(/[\s\u00a0\u2009\u202f]/g, '').replace('\u2212', '-');
  const groups = text.split(thousandsSign);
  const isGrouped = /^-?[1-9]\d{0,2}$/.test(groups[0] ?? '') && groups.slice(1).every((g) => /^\d{3}(\D|$)/.test(g));
  return (isGrouped ? groups.join('') : text).replace(',', '.');
}

/** Whether this many of a thing is spoken of as one. A fraction below one is: "three eighths inch". */
function isSingular(printed: string, { singular }: NumberWords): boolean {
  if (/^\d+\/\d+$/.test(printed)) return true;
  const value = Math.abs(Number(printed.replace(',', '.')));
  return singular === 'one' ? value === 1 : value < 2;
}

export const formFor = (printed: string, forms: Forms, words: NumberWords): string =>
  isSingular(printed, words) ? forms.one : forms.many;
