import { readFile } from 'node:fs/promises';
import type { Plugin } from 'vite';

/** Grammars and lexicons reach the page as text without their comments, which are for those who write them. */
export function grammarText(): Plugin {
  return {
    name: 'wrenchside-grammar-text',
    enforce: 'pre',
    async load(id) {
      const [path = '', query] = id.split('?');
      const comment = COMMENTS.find(([ending]) => path.endsWith(ending))?.[1];
      if (comment === undefined || query !== 'raw') return null;
      const text = await readFile(path, 'utf8');
      const bare = text
        .replaceAll(comment, '')
        .replaceAll(/\n{2,}/g, '\n')
        .replaceAll(/ {2,}/g, ' ');
      return `export default ${JSON.stringify(bare)};`;
    },
  };
}

const COMMENTS: readonly (readonly [ending: string, comment: RegExp])[] = [
  ['.jsgf', /[ \t]*\/\/.*$/gm],
  ['/lexicon.txt', /^#.*$/gm],
];

/** Everything of a language that the first paint needs, as one module: `language.yaml?all`, from the files beside it. */
export function wholeLanguage(): Plugin {
  return {
    name: 'wrenchside-whole-language',
    enforce: 'pre',
    load: (id) => (id.endsWith('/language.yaml?all') ? WHOLE : null),
  };
}

const WHOLE = `
import commands from './commands.jsgf?raw';
import numbers from './numbers.jsgf?raw';
import lexicon from './lexicon.txt?raw';
import phones from './sounds.yaml?phones';
import replies from './replies.yaml';
import screen from './screen.yaml?first';
export default { commands, numbers, lexicon, phones, replies, screen };
`;
