/**
 * Characters that change how text looks or sounds without being seen: controls, marks that turn reading direction,
 * invisible spaces and joiners, and halves of surrogate pairs. A warning must read the same to everyone.
 */
const HIDDEN = new RegExp(
  [
    '[\\u0000-\\u0008\\u000b\\u000c\\u000e-\\u001f\\u007f-\\u009f]',
    '[\\u061c\\u200b-\\u200f\\u2028-\\u202e\\u2060-\\u206f\\ufeff\\ufff9-\\ufffb]',
    '[\\ud800-\\udbff](?![\\udc00-\\udfff])',
    '(?<![\\ud800-\\udbff])[\\udc00-\\udfff]',
  ].join('|'),
);

/** The first hidden character of some text as U+ digits, or null. */
export function hiddenCharacter(text: string): { readonly offset: number; readonly name: string } | null {
  const found = HIDDEN.exec(text);
  if (found === null) return null;
  const digits = (found[0].codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
  return { offset: found.index, name: `U+${digits}` };
}
