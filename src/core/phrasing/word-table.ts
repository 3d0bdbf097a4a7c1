/** Words or signs with what is said for them, and one pattern that finds them all where they count. */
export type WordTable = { readonly pattern: RegExp; readonly words: ReadonlyMap<string, string> };

/** `around` puts the pattern of any entry into the pattern of where an entry counts. Of two entries the longer is found first. */
export function wordTable(words: ReadonlyMap<string, string>, around: (anyEntry: string) => string): WordTable {
  const longestFirst = [...words.keys()].sort((a, b) => b.length - a.length).map(escaped);
  const anyEntry = longestFirst.length > 0 ? `(?<entry>${longestFirst.join('|')})` : '(?<entry>(?!))';
  return { pattern: new RegExp(around(anyEntry), 'gu'), words };
}

/** The text with every entry replaced, in one go: what comes out of one entry is not put into another. */
export const rewritten = (text: string, { pattern, words }: WordTable, pad = ' '): string =>
  text.replace(pattern, (found, entry: string) => pad + (words.get(entry) ?? found) + pad);

const escaped = (text: string): string => text.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&');
