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
function format(name: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const made = formats.get(name) ?? new Intl.DateTimeFormat('en-GB', options);
  formats.set(name, made);
  return made;
}

/** "14:05", in the zone of this machine or the one named. */
export const clockTime = (at: number, timeZone?: string): string =>
  format(`clock ${timeZone}`, { hour: '2-digit', minute: '2-digit', ...(timeZone ? { timeZone } : {}) }).format(at);

/** "Tuesday 4 March 2031". */
export const dayWords = (at: number, timeZone?: string): string =>
  format(`day ${timeZone}`, {
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    ...(timeZone ? { timeZone } : {}),
  }).format(at);

/** "4 Mar 2031, 14:05". */
export const dateAndTime = (at: number, timeZone?: string): string =>
  format(`both ${timeZone}`, {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    ...(timeZone ? { timeZone } : {}),
  }).format(at);
