import { readdirSync, readFileSync } from 'node:fs';
import type { Plugin } from 'vite';
import { parse } from 'yaml';

const PLACE = '<!-- no script -->';
const GRAMMARS = `${import.meta.dirname}/../grammars`;

/** Writes into the page what stands there where scripts are off: nobody can choose a language then, so it is told in each. */
export function pageWords(): Plugin {
  return {
    name: 'wrenchside-page-words',
    transformIndexHtml: (html) => html.replace(PLACE, noScript),
  };
}

const noScript = (): string =>
  readdirSync(GRAMMARS)
    .sort()
    .map((code) => `<p lang="${code}">${escaped(parse(readFileSync(`${GRAMMARS}/${code}/page.yaml`, 'utf8')))}</p>`)
    .join('');

function escaped(page: { readonly 'no-script': string }): string {
  return page['no-script'].replaceAll('&', '&amp;').replaceAll('<', '&lt;');
}
