import { readFile } from 'node:fs/promises';
import type { Plugin } from 'vite';

const COMMENTS = [
  ['.jsgf', /[ \t]*\/\/.*$/gm],
  ['lexicon.txt', /^#.*$/gm],
] as const;

/** Grammars and lexicons reach the page as text without their comments, which are for those who write them. */
export function grammarText(): Plugin {
  return {
    name: 'wrenchside-grammar-text',
    enforce: 'pre',
    async load(id) {
      const [path = '', query] = id.split('?');
      const comment = query === 'raw' ? COMMENTS.find(([file]) => path.endsWith(file))?.[1] : undefined;
      if (!comment) return null;
      const text = await readFile(path, 'utf8');
      return `export default ${JSON.stringify(text.replaceAll(comment, '').replaceAll(/\n{2,}/g, '\n'))};`;
    },
  };
}
