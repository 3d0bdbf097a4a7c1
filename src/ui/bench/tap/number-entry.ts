/** A number as it is keyed in: figures with at most one point, perhaps not finished. */
export type NumberEntry = string;

/** More digits than these before the point are no value of a workshop. */
const MOST_DIGITS = 5;

/** The entry after one more key; a key that cannot belong to the number changes nothing. */
export function withKey(entry: NumberEntry, key: string, decimals: number): NumberEntry {
  if (key === '.') return decimals > 0 && !entry.includes('.') ? `${entry || '0'}.` : entry;
  if (!/^\d$/.test(key)) return entry;
  const [whole = '', behind] = entry.split('.');
  if (behind !== undefined) return behind.length < decimals ? entry + key : entry;
  if (whole === '0') return key;
  return whole.length < MOST_DIGITS ? entry + key : entry;
}

export const withoutLast = (entry: NumberEntry): NumberEntry => entry.slice(0, -1);

/** Whether it is a number as it stands. */
export const isWhole = (entry: NumberEntry): boolean => /^\d+(?:\.\d+)?$/.test(entry);
