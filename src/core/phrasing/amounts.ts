import type { UnitName } from '../fastening/quantity';
import { isUnitName, symbolOf } from '../fastening/unit';
import { unitsSpelt } from '../fastening/unit-spelling';
import { numberWords, printedNumberWords } from './number-words';
import { PRINTED_NUMBER, rangeWords, unitWords } from './quantity-words';
import type { SpeechWords } from './speech-words';

/** What joins the two ends of a range, or a value and its tolerance. */
const JOINT = '\\s*(?:-|\\u2012|\\u2013|\\u2014|\\u2026|\\.\\.\\.|±|\\+\\/-|\\+-)\\s*';

/** What may stand for a unit behind a number: "N·m", "ft-lb", "ft lb", "°C", "kgf/cm2", "%", or a word. */
const UNIT_MARK =
  '(?:ft|in|lbf?|ozf?)[ ·⋅•*-](?:lbf?|ft|in|ozf?)(?![\\p{L}\\d])|N[ ·⋅•.*-]?m(?![\\p{L}\\d])|kgf?[·⋅•.*-]?c?m(?![\\p{L}\\d])|kgf?\\/cm2|N\\/mm2|(?:US|imp) (?:gal|qt)(?![\\p{L}\\d])|°\\s?[CF](?![\\p{L}\\d])|°|%|[µμ]?[A-Za-z]+(?![\\p{L}\\d])';

const AMOUNT = new RegExp(
  `(?<before>^|[\\s(,;:])?(?<sign>[-\\u2212])?(?<![\\d.,])(?<first>${PRINTED_NUMBER})` +
    `(?:(?<joint>${JOINT})(?<second>${PRINTED_NUMBER}))?(?!\\d)` +
    `(?:(?<gap>[\\s-]*)(?<unit>${UNIT_MARK})(?=(?<hyphen>-?)\\s*(?<next>[\\p{L}]*)))?`,
  'gu',
);

type Amount = Readonly<
  Partial<Record<'before' | 'sign' | 'first' | 'joint' | 'second' | 'gap' | 'unit' | 'hyphen' | 'next', string>>
>;

/** Every number of a text in words, with the unit it has. */
export const spokenAmounts = (text: string, words: SpeechWords): string =>
  text
    .replace(AMOUNT, (...found) => amountWords(groupsOf(found), words))
    .replace(/\d+/g, (figures) => ` ${numberWords(figures, words.numbers)} `);

function amountWords(amount: Amount, words: SpeechWords): string {
  const { before, sign, first = '', joint, second, gap = '', unit } = amount;
  // After a letter or a figure a hyphen joins, it does not take away: "5W-30".
  const signed = sign !== undefined && before !== undefined ? `-${first}` : first;
  const number =
    joint !== undefined && second !== undefined
      ? rangeWords(signed, joint, second, words)
      : printedNumberWords(signed, words.numbers, words.fractions);
  const tail = unit === undefined ? ' ' : (unitSaid(amount, words) ?? gap + unit);
  return `${before ?? ''} ${number} ${tail}`;
}

function unitSaid(amount: Amount, words: SpeechWords): string | undefined {
  const { first = '', second, gap = '', hyphen = '', next = '' } = amount;
  const unit = unitMarked(amount, words);
  if (unit === undefined) return undefined;
  const isAttribute = gap.includes('-') || hyphen !== '' || words.documents.afterUnit.has(next);
  return isAttribute ? words.units[unit].one : unitWords(second ?? first, unit, words);
}

/** The unit that a mark behind a number stands for. Words that are no marks, and marks of two units, stay as they are. */
function unitMarked({ unit: mark = '', first = '', next = '' }: Amount, words: SpeechWords): UnitName | undefined {
  const [unit, ...others] = isUnitName(mark) ? [mark] : unitsSpelt(mark);
  if (!unit || others.length > 0) return undefined;
  if (mark === 'in' && /^\d+$/.test(first) && words.documents.notInches.has(next)) return undefined;
  return isUnitName(mark) || mark === symbolOf(unit) || /[^a-z]/i.test(mark) || mark.length <= 3 ? unit : undefined;
}

/** The named groups come last among the arguments of a replacer. */
function groupsOf(found: readonly unknown[]): Amount {
  const last = found.at(-1);
  return typeof last === 'object' && last !== null ? last : {};
}
