/** The longest text rendered in one go, in characters: about twenty-five seconds of speech. */
export const LONGEST_TEXT = 400;

/**
 * Text as the synthesiser may be given it: printable ASCII on one line, at most `LONGEST_TEXT` characters, cut at a
 * space where there is one. Accents are folded away and other characters become spaces, because the synthesiser reads
 * bytes and would say the parts of a UTF-8 sequence. Spelling out units and signs is the business of the phrasing, not
 * of this function. Empty when nothing sayable is left.
 */
export function plainText(text: string): string {
  const folded = text.normalize('NFKD').replace(/\p{Mark}/gu, '');
  const ascii = folded.replace(/[‘’]/g, "'").replace(/[^\x20-\x7e]/g, ' ');
  const line = ascii.replace(/ {2,}/g, ' ').trim();
  return /[a-z0-9]/i.test(line) ? shortened(line) : '';
}

function shortened(line: string): string {
  if (line.length <= LONGEST_TEXT) return line;
  const lastSpace = line.lastIndexOf(' ', LONGEST_TEXT);
  return line.slice(0, lastSpace > 0 ? lastSpace : LONGEST_TEXT);
}
