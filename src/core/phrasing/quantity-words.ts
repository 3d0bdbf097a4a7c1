import type { UnitName } from '../fastening/quantity';
import { symbolOf } from '../fastening/unit';
import { figureText } from './figure-text';
import { digitByDigit, formFor, numberWords, printedNumberWords } from './number-words';
import type { Figure } from './reply';
import { put, type SpeechWords } from './speech-words';

/** What is said and what is shown of the same thing. */
export type Phrased = { readonly spoken: string; readonly shown: string };

/** One number as manuals print it, without its sign. */
export const PRINTED_NUMBER =
  '(?:\\d+[ -]\\d+\\/\\d+|\\d+\\/\\d+|\\d{1,3}(?:[\\u00a0\\u2009\\u202f]\\d{3})+(?:[.,]\\d+)?|\\d+(?:[.,]\\d+)*|\\.\\d+)';

/** One number, or two with whatever joins them. A sign before the second counts where something else joins them. */
const FIGURE = new RegExp(`^\\s*([-\\u2212]?)(${PRINTED_NUMBER})(?:(\\D+?)([-\\u2212]?)(${PRINTED_NUMBER}))?\\D*$`);

/** A figure with its unit. The document's own spelling is shown as it stands, and its own numbers are the ones said. */
export function figurePhrase(figure: Figure, words: SpeechWords): Phrased {
  const { printed, value, unit } = figure;
  const own = printed === undefined ? undefined : printedFigureWords(printed, unit, words);
  return {
    spoken: own ?? valueWords(figureText(value), unit, words),
    shown: printed ?? withSymbol(shownNumber(value, words), unit),
  };
}

/** A number read back digit by digit, its unit in full. */
export function digitsPhrase(value: number, unit: UnitName | null, words: SpeechWords): Phrased {
  const figures = figureText(value);
  const digits = digitByDigit(figures, words.numbers);
  const shown = shownNumber(value, words);
  if (unit === null) return { spoken: digits, shown };
  return { spoken: `${digits} ${unitWords(figures, unit, words)}`, shown: withSymbol(shown, unit) };
}

export const numberPhrase = (value: number, words: SpeechWords): Phrased => ({
  spoken: numberWords(figureText(value), words.numbers),
  shown: shownNumber(value, words),
});

/** The unit in the number that goes with a printed amount. */
export const unitWords = (amount: string, unit: UnitName, words: SpeechWords): string =>
  formFor(amount, words.units[unit], words.numbers);

/** A range or tolerance in words, without its unit. */
export function rangeWords(from: string, joint: string, to: string, words: SpeechWords): string {
  const first = printedNumberWords(from, words.numbers, words.fractions);
  const second = printedNumberWords(to, words.numbers, words.fractions);
  return /[±+]/.test(joint)
    ? put(words.figures.tolerance, { value: first, by: second })
    : put(words.figures.range, { from: first, to: second });
}

function valueWords(figures: string, unit: UnitName, words: SpeechWords): string {
  return `${numberWords(figures, words.numbers)} ${unitWords(figures, unit, words)}`;
}

function printedFigureWords(printed: string, unit: UnitName, words: SpeechWords): string | undefined {
  const match = FIGURE.exec(printed.replaceAll(/(?<=m|in)[23²³]/g, ''));
  if (!match) return undefined;
  const [, sign = '', first = '', joint, secondSign = '', second] = match;
  if (joint !== undefined && second !== undefined)
    return `${rangeWords(sign + first, joint, secondSign + second, words)} ${unitWords(second, unit, words)}`;
  const number = printedNumberWords(sign + first, words.numbers, words.fractions);
  return `${number} ${unitWords(first, unit, words)}`;
}

const shownNumber = (value: number, words: SpeechWords): string =>
  figureText(value).replace('.', words.numbers.pointSign);

/** A degree of angle stands at its number; every other symbol keeps a space (SI Brochure, 5.4.3). */
const withSymbol = (number: string, unit: UnitName): string =>
  unit === 'deg' ? `${number}${symbolOf(unit)}` : `${number} ${symbolOf(unit)}`;
