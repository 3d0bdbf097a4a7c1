import type { UnitName } from '../fastening/quantity';
import { isUnitName, symbolOf, UNIT_NAMES } from '../fastening/unit';
import { unitsSpelt } from '../fastening/unit-spelling';
import { printedNumberWords } from './number-words';
import { PRINTED_JOINT, PRINTED_NUMBER, rangeWords, unitWords } from './quantity-words';
import type { SpeechWords } from './speech-words';

/** What may stand for a unit behind a number: "N·m", "ft-lb", "ft lb", "°C", "kgf/cm2", "%", or a short word. */
const UNIT_MARK =
  '(?:(?:ft|in|lbf?|ozf?)[ ·⋅•*-](?:lbf?|ft|in|ozf?)\\b|N[ ·⋅•.*-]?m\\b|kgf?[·⋅•.*-]?c?m\\b|kgf?\\/cm2|N\\/mm2|°\\s?[CF]\\b|°|%|[µμ]?[A-Za-z]+\\b)';

const AMOUNT = new RegExp(
  `(?<before>^|[\\s(,;:])?(?<sign>[-\\u2212])?(?<![\\d.,])(?<first>${PRINTED_NUMBER})(?:(?<joint>${PRINTED_JOINT})(?<second>${PRINTED_NUMBER}))?(?![\\d])(?:(?<gap>\\s*)(?<unit>${UNIT_MARK})(?=\\s*(?<next>[A-Za-z]*)))?`,
  'g',
);

/**
 * The words of a document as a voice can say them: numbers, fractions, ranges and units in full, printed signs and
 * abbreviations by the tables of the language, initials spelled out. What comes out holds letters, spaces and
 * `. , ; : ? ! '` only, on one line.
 */
export function speakable(text: string, words: SpeechWords): string {
  const { betweenNumbers, signs } = words.documents;
  let said = abbreviated(flat(text), words);
  for (const [sign, word] of betweenNumbers)
    said = said.replace(new RegExp(`(?<=\\d)\\s*${escaped(sign)}\\s*(?=\\d)`, 'g'), ` ${word} `);
  said = said.replace(AMOUNT, (...found) => amountWords(groupsOf(found), words));
  for (const name of UNIT_NAMES)
    if (/[·°²]/.test(symbolOf(name))) said = said.replaceAll(symbolOf(name), ` ${words.units[name].many} `);
  for (const [sign, word] of signs) said = said.replaceAll(sign, ` ${word} `);
  return tidied(initials(said));
}

/** One line without control characters, vulgar fractions written out, thousands closed up, quotation marks gone. */
function flat(text: string): string {
  return text
    .replace(/(?<=\d)(?=[\u00bc-\u00be\u2150-\u215e])/g, ' ')
    .replace(/(?<=\d)[\u00a0\u2009\u202f](?=\d{3}(?!\d))/g, '')
    .normalize('NFKC')
    .replaceAll('\u2044', '/')
    .replace(/[\u2018\u2019]/g, "'")
    .replace(/["\u201c-\u201f\u00ab\u00bb]/g, '')
    .replace(/[\p{Cc}\p{Cf}\s]+/gu, ' ')
    .trim();
}

function abbreviated(text: string, words: SpeechWords): string {
  let said = text;
  for (const [short, long] of words.documents.abbreviations)
    said = said.replace(new RegExp(`(?<![\\p{L}\\d])${escaped(short)}(?![\\p{L}\\d])`, 'gu'), long);
  return said;
}

type Amount = Readonly<
  Partial<Record<'before' | 'sign' | 'first' | 'joint' | 'second' | 'gap' | 'unit' | 'next', string>>
>;

function amountWords(found: Amount, words: SpeechWords): string {
  const { before, sign, first = '', joint, second, gap = '', unit, next = '' } = found;
  // After a letter or a figure a hyphen joins, it does not take away: "5W-30".
  const isMinus = sign !== undefined && before !== undefined;
  const number =
    joint !== undefined && second !== undefined
      ? rangeWords(isMinus ? `-${first}` : first, joint, second, words)
      : printedNumberWords(isMinus ? `-${first}` : first, words.numbers, words.fractions);
  const named = unit === undefined ? undefined : unitMarked(unit, first, next, words);
  const tail = unit === undefined ? '' : named ? unitWords(second ?? first, named, words) : gap + unit;
  return `${before ?? ''} ${number} ${tail} `;
}

/** The unit that a mark behind a number stands for. Words that are no marks, and marks of two units, stay as they are. */
function unitMarked(mark: string, amount: string, next: string, words: SpeechWords): UnitName | undefined {
  const [unit, ...others] = isUnitName(mark) ? [mark] : unitsSpelt(mark);
  if (!unit || others.length > 0) return undefined;
  if (mark === 'in' && /^\d+$/.test(amount) && words.documents.notInches.has(next)) return undefined;
  return isUnitName(mark) || mark === symbolOf(unit) || /[^a-z]/i.test(mark) || mark.length <= 3 ? unit : undefined;
}

/** Letters that no mouth can read together are said one by one: "PCV". */
const initials = (text: string): string =>
  text.replace(/(?<!\p{L})[B-DF-HJ-NP-TV-XZ]{2,5}(?!\p{L})/gu, (letters) => [...letters].join(' '));

const tidied = (text: string): string =>
  text
    .replace(/\s+[-\u2010-\u2015\u2212]+\s+/g, ', ')
    .replace(/[()[\]]/g, ', ')
    .replace(/(?<!\p{L})'|'(?!\p{L})/gu, ' ')
    .replace(/[^\p{L}\p{M} .,;:?!']/gu, ' ')
    .replace(/\s+/g, ' ')
    .replace(/ (?=[.,;:?!])/g, '')
    .replace(/[.,;:]*([.,;:?!])(?:[.,;:?!])*/g, (run) => strongest(run))
    .replace(/^[.,;:\s]+/, '')
    .trim();

/** Of several stops in a row the one that ends most. */
const strongest = (run: string): string => [...'?!.;:,'].find((stop) => run.includes(stop)) ?? '';

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');

/** The named groups come last among the arguments of a replacer. */
function groupsOf(found: readonly unknown[]): Amount {
  const last = found.at(-1);
  return typeof last === 'object' && last !== null ? last : {};
}
