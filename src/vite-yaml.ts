import { readFile } from 'node:fs/promises';
import type { Plugin } from 'vite';
import { parse } from 'yaml';

/** Word files become data at build time, so that the page starts without a YAML parser. Documents stay text (`?raw`). */
export function yamlData(): Plugin {
  return {
    name: 'wrenchside-yaml-data',
    enforce: 'pre',
    async load(id) {
      if (!id.endsWith('.yaml')) return null;
      return `export default ${JSON.stringify(parse(await readFile(id, 'utf8')))};`;
    },
  };
}
