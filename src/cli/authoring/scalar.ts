/** Words that YAML's core schema would take for something else. */
const TAKEN = /^(?:true|false|null|~|[-+]?\.inf|\.nan)$/i;
const PLAIN = /^[\p{L}(][\p{L}\p{N} .'’()/·°%–-]*$/u;

/** Text as it can stand behind a key or inside brackets: plain where nothing can misread it, else in quotes. */
export const scalar = (text: string): string =>
  PLAIN.test(text) && !TAKEN.test(text) && text.trim() === text ? text : JSON.stringify(text);

/** A figure reads better plain: "30 N·m (22 lbf·ft)". Anything unusual is quoted. */
export const figureScalar = (text: string): string =>
  /^\d[\d.]*(?:–\d[\d.]*)? ?[\p{L}°%][\p{L}\p{N} .()/·°%–-]*$/u.test(text) ? text : JSON.stringify(text);

export const flowList = (numbers: readonly number[]): string => `[${numbers.join(', ')}]`;

export const flowTexts = (texts: readonly string[]): string => `[${texts.map(scalar).join(', ')}]`;

/** An id made from a name: small letters, digits and dashes, starting with a letter. */
export function idFrom(name: string): string {
  const plain = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/\p{M}/gu, '')
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 50)
    .replace(/-+$/, '');
  if (plain === '') return 'new-procedure';
  // Names that every object has are refused as ids; so is a digit in front.
  return plain in {} || plain === 'prototype' || !/^[a-z]/.test(plain) ? `job-${plain}` : plain;
}
