import { readFile } from 'node:fs/promises';
import type { Plugin } from 'vite';
import { parse } from 'yaml';

/** Of a file of sounds, `?phones`, only the names are for the page. */
function phonesOf({ consonants, vowels }: { readonly consonants: object; readonly vowels: object }): string {
  return `export default ${JSON.stringify([...Object.keys(consonants), ...Object.keys(vowels)])};`;
}

/** Parts a word file in two: `?first` is what stands above it, `?later` what stands below. */
const LATER = /^# ====.*$/m;

/** Word files become data at build time, so that the page starts without a YAML parser. Documents stay text (`?raw`). */
export function yamlData(): Plugin {
  return {
    name: 'wrenchside-yaml-data',
    enforce: 'pre',
    async load(id) {
      const [path = '', part] = id.split('?');
      if (!path.endsWith('.yaml') || part === 'raw') return null;
      const text = await readFile(path, 'utf8');
      if (part === undefined) return dataOf(text);
      if (part === 'phones') return phonesOf(parse(text));
      const [first, later] = text.split(LATER);
      if (first === undefined || later === undefined) this.error(`${path} has no line that parts it`);
      return dataOf(part === 'first' ? first : later);
    },
  };
}

const dataOf = (text: string): string => `export default ${JSON.stringify(parse(text))};`;
