import { readFile } from 'node:fs/promises';
import type { Plugin } from 'vite';

/** Grammars reach the page as text without their comments, which are for those who write them. */
export function grammarText(): Plugin {
  return {
    name: 'wrenchside-grammar-text',
    enforce: 'pre',
    async load(id) {
      const [path = '', query] = id.split('?');
      if (!path.endsWith('.jsgf') || query !== 'raw') return null;
      const text = await readFile(path, 'utf8');
      return `export default ${JSON.stringify(text.replaceAll(/[ \t]*\/\/.*$/gm, '').replaceAll(/\n{2,}/g, '\n'))};`;
    },
  };
}
