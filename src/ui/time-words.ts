import type { Say } from './words/words';

/** Times as the screens write them. Nothing here reads a clock: every time is given. */

const pad = (n: number): string => String(n).padStart(2, '0');

/** What is left of a timer, "12:40" or "2:05:00"; the last part of a second counts as a whole one. */
export function countdown(ms: number): string {
  const seconds = Math.ceil(Math.max(0, ms) / 1000);
  const [h, m, s] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60];
  return h > 0 ? `${h}:${pad(m)}:${pad(s)}` : `${m}:${pad(s)}`;
}

/** Hours and whole minutes of a stretch of work, rounded to the nearest minute. */
export function hoursAndMinutes(ms: number): { readonly hours: number; readonly minutes: number } {
  const minutes = Math.round(ms / 60_000);
  return { hours: Math.floor(minutes / 60), minutes: minutes % 60 };
}

const formats = new Map<string, Intl.DateTimeFormat>();

/** Making a format is slow and a long record asks for it twenty thousand times. */
function formatFor(locale: string | undefined, timeZone: string | undefined): Intl.DateTimeFormat {
  const key = `${locale} ${timeZone}`;
  const made =
    formats.get(key) ??
    new Intl.DateTimeFormat(locale, {
      weekday: 'long',
      day: 'numeric',
      month: 'long',
      year: 'numeric',
      hour: '2-digit',
      minute: '2-digit',
      hourCycle: 'h23',
      numberingSystem: 'latn',
      ...(timeZone ? { timeZone } : {}),
    });
  formats.set(key, made);
  return made;
}

type Part = (name: Intl.DateTimeFormatPartTypes) => string;

/** Only the parts are the browser's; how they are put together is ours, because browsers differ in their commas. */
function partsOf(at: number, locale: string | undefined, timeZone: string | undefined): Part {
  const parts = formatFor(locale, timeZone).formatToParts(at);
  return (name) => parts.find(({ type }) => type === name)?.value ?? '';
}

const hourAndMinute = (part: Part): string => `${part('hour')}:${part('minute')}`;

/** "14:05", in the zone of this machine or the one named. The same in every language. */
export const clockTime = (at: number, timeZone?: string): string => hourAndMinute(partsOf(at, undefined, timeZone));

/** "Tuesday 4 March 2031", in the words and the order of the language. */
export function dayWords(say: Say, at: number, timeZone?: string): string {
  const part = partsOf(at, say('date-locale'), timeZone);
  return say('date-day', {
    weekday: part('weekday'),
    day: part('day'),
    month: part('month'),
    year: part('year'),
  });
}

/** The same of a day without a time, "2031-03-04", which no zone can move. */
export const isoDayWords = (say: Say, day: string): string => dayWords(say, Date.parse(day), 'UTC');

/** "4 March 2031, 14:05". */
export function dateAndTime(say: Say, at: number, timeZone?: string): string {
  const part = partsOf(at, say('date-locale'), timeZone);
  const time = hourAndMinute(part);
  return say('date-time', { day: part('day'), month: part('month'), year: part('year'), time });
}

const QUARTER_HOUR_MS = 900_000;

/** For a whole log. Writing out a date is slow, and within a quarter of an hour it cannot change: no zone has a finer offset. */
function eachQuarter<T>(of: (at: number) => T): (at: number) => T {
  const known = new Map<number, T>();
  return (at) => {
    const quarter = Math.floor(at / QUARTER_HOUR_MS);
    const value = known.get(quarter) ?? of(at);
    known.set(quarter, value);
    return value;
  };
}

export const dayTeller = (say: Say, timeZone?: string): ((at: number) => string) =>
  eachQuarter((at) => dayWords(say, at, timeZone));

export type DayName = { readonly day: string; readonly name: string };

/** A day in full, and as short as it may be among others: "Tuesday 4". */
export const dayNames = (say: Say, timeZone?: string): ((at: number) => DayName) =>
  eachQuarter((at) => {
    const part = partsOf(at, say('date-locale'), timeZone);
    const name = say('date-short', { weekday: part('weekday'), day: part('day') });
    return { day: dayWords(say, at, timeZone), name };
  });

/** Quarters of an hour since midnight, 0 to 95. */
export const quarterOfDay = (timeZone?: string): ((at: number) => number) =>
  eachQuarter((at) => {
    const [hours = 0, minutes = 0] = clockTime(at, timeZone).split(':').map(Number);
    return Math.floor((60 * hours + minutes) / 15);
  });
