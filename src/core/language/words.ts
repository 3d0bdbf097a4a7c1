const PRONUNCIATION_MARK = /\(\d+\)/g;
const TOKEN = /\d+(?:[.,]\d+)?|['\p{L}][\p{L}\p{M}']*/gu;

/**
 * Text as the words a recogniser gives: lower case, apostrophes inside words kept, other punctuation and hyphens
 * dropped, figures as they are ("45", "1.5"). The mark of an alternative pronunciation, "zero(2)", is taken off.
 */
export function plainWords(text: string): readonly string[] {
  const plain = text.normalize('NFC').toLowerCase().replace(/[’`]/g, "'").replace(PRONUNCIATION_MARK, '');
  return (plain.match(TOKEN) ?? []).map((token) => token.replace(/'+$/, '').replace(',', '.')).filter(Boolean);
}

/** The number a word stands for in figures, or undefined for an ordinary word. */
export const figures = (word: string): number | undefined => (/^\d/.test(word) ? Number(word) : undefined);
