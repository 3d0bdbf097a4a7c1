/** A page with the part of this name written anew, between its two marks. */
export function between(page: string, name: string, lines: readonly string[]): string {
  const [begin, end] = [`<!-- generated: ${name} -->`, `<!-- end of ${name} -->`];
  const [before, rest] = page.split(begin);
  const after = rest?.split(end)[1];
  if (before === undefined || after === undefined) throw new Error(`the page has no place for its ${name}`);
  return `${before}${begin}\n\n${lines.join('\n')}\n\n${end}${after}`;
}
