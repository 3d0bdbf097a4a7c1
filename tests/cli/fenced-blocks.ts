/** A fenced block of a Markdown file: its info words, its text and the line it begins at. */
export type FencedBlock = { readonly info: string; readonly text: string; readonly line: number };

export function fencedBlocks(markdown: string): readonly FencedBlock[] {
  const blocks: FencedBlock[] = [];
  let open: { readonly info: string; readonly line: number; readonly lines: string[] } | null = null;
  for (const [index, line] of markdown.split('\n').entries()) {
    const fence = /^```(.*)$/.exec(line);
    if (!fence) open?.lines.push(line);
    else if (open === null) open = { info: (fence[1] ?? '').trim(), line: index + 1, lines: [] };
    else {
      blocks.push({ info: open.info, text: `${open.lines.join('\n')}\n`, line: open.line });
      open = null;
    }
  }
  if (open !== null) throw new Error(`the block of line ${open.line} is never closed`);
  return blocks;
}
