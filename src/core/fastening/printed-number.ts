import { fail, ok, type Result } from '../result';

/** A number as printed, and the worth of its last digit: 0.05 has the step 0.01; a fraction is exact and has 0. */
export type PrintedNumber = { readonly value: number; readonly step: number };

export type NumberIssue =
  | { readonly code: 'not-a-number'; readonly given: string }
  /** "1,250" is one and a quarter or twelve hundred and fifty, by country. */
  | { readonly code: 'ambiguous-comma'; readonly given: string };

/** The shape of one printed number, for use inside larger patterns: 30, 0.05, 0,05, 12 500, 3/8, 1 1/2, 1-1/2, -37. */
export const NUMBER =
  '[-\\u2212+]?(?:\\d+[ -]\\d+\\/\\d+|\\d+\\/\\d+|\\d{1,3}(?:[ \\u00a0\\u2009\\u202f]\\d{3})+(?:[.,]\\d+)?|\\d+(?:[.,]\\d+)*|\\.\\d+)';

/** Reads one printed number. A comma is a decimal sign unless the number can also be read with it between thousands. */
export function parseNumber(given: string): Result<PrintedNumber, NumberIssue> {
  const text = given.trim().replace('\u2212', '-');
  const fraction = /^([-+]?)(?:(\d+)[ -])?(\d+)\/(\d+)$/.exec(text);
  if (fraction) {
    const [, sign, whole = '0', top, bottom] = fraction;
    const value = Number(whole) + Number(top) / Number(bottom);
    return Number.isFinite(value) ? ok({ value: sign === '-' ? -value : value, step: 0 }) : notANumber(given);
  }
  const closed = text.replace(/[\s\u00a0\u2009\u202f]/g, '');
  if (/^[-+]?[1-9]\d{0,2},\d{3}$/.test(closed)) return fail({ code: 'ambiguous-comma', given });
  const pointed = /^[-+]?\d{1,3}(?:,\d{3})+\.\d+$|^[-+]?\d{1,3}(?:,\d{3}){2,}$/.test(closed)
    ? closed.replaceAll(',', '')
    : closed.replace(',', '.');
  if (!/^[-+]?(?:\d+(?:\.\d+)?|\.\d+)$/.test(pointed)) return notANumber(given);
  const decimals = pointed.split('.')[1]?.length ?? 0;
  return ok({ value: Number(pointed), step: 10 ** -decimals });
}

const notANumber = (given: string) => fail({ code: 'not-a-number', given } as const);

/** The worth of the last digit of the first number in a printed text; its maker rounded to that. 0 for a fraction. */
export function lastDigitOf(printed: string): number {
  const first = new RegExp(NUMBER).exec(printed);
  const read = first ? parseNumber(first[0]) : undefined;
  return read?.ok ? read.value.step : 0;
}
