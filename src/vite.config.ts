import { defineConfig } from 'vitest/config';
import { licences } from './cli/licences/vite-licences.ts';
import { offlineWorker } from './offline/vite-offline.ts';
import { modelAssets } from './speech/vite-model-assets.ts';
import { grammarText, wholeLanguage } from './vite-grammar.ts';
import { pageWords } from './vite-page.ts';
import { LongestFirst } from './vite-test-order.ts';
import { yamlData } from './vite-yaml.ts';

/**
 * One script for each language, one for those of its texts that come after the first paint, and one for what is wrong
 * with a document. What Setup offers of every language is part of each start, and their wordings of the checker.
 */
function languageScript(id: string): string | null {
  const [, language, file, later] = /\/grammars\/(\w+)\/(\w+\.\w+)(\?later)?/.exec(id) ?? [];
  if (language === undefined || id.endsWith('language.yaml') || id.endsWith('wording.yaml')) return null;
  return `language-${language}${later ? '-later' : file === 'findings.yaml' ? '-findings' : ''}`;
}

const here = import.meta.dirname;

/** Tests of what keeps nothing in its modules and puts nothing in place of what Node has: many to a process. */
const TOGETHER = [
  'tests/{boundaries,{core,grammars,machine,cases,cli,ui,shell,vosk,offline,housekeeping}/**/*}.test.{ts,tsx}',
];

/** Modules of the core that every start loads, whatever else uses them too. What only a kept log needs comes with it. */
const FIRST =
  /src\/core\/(?:job\/(?!entry-guard)|phrasing|log\/(?:bytes|envelope|chain)|fastening\/(?:unit|unit-spelling|quantity|printed-number|shown-figure|steady|positive|clock)\.ts)/;

export default defineConfig({
  root: here,
  // Relative addresses: the build works from any static host and any folder of it.
  base: './',
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    assetsInlineLimit: 0,
    target: 'es2022',
    // One script is 5.8 MB: the library for a model of one's own, fetched only on choice and held by tests/housekeeping.
    chunkSizeWarningLimit: 6000,
    // The page for a model of one's own is a document apart, because it needs a policy of its own.
    rolldownOptions: {
      input: { index: `${here}/index.html`, vosk: `${here}/vosk.html` },
      // What every start needs packs better as one script than as the pieces that later screens share.
      output: {
        codeSplitting: {
          groups: [
            { name: languageScript, debugName: 'language', test: /\/grammars\// },
            { name: 'grammar', test: /src\/core\/(?:language\/|result)/, priority: 1 },
            { name: 'core', test: FIRST },
          ],
        },
      },
    },
  },
  server: { fs: { allow: ['..'] } },
  worker: { format: 'es' },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  // soundswallower imports a Blob polyfill that needs a document, which a worker does not have.
  resolve: { alias: { 'blob-polyfill': `${here}/speech/native-blob.ts` } },
  optimizeDeps: { exclude: ['soundswallower'], include: ['@bjorn3/browser_wasi_shim', 'howler', 'vosk-browser'] },
  plugins: [pageWords(), wholeLanguage(), yamlData(), grammarText(), modelAssets(), licences(), offlineWorker()],
  test: {
    root: `${here}/..`,
    environment: 'node',
    // A hang is a fault; a busy machine is not.
    testTimeout: 120_000,
    hookTimeout: 60_000,
    // What is heard in a browser is heard in real time and mostly waits, so three files at once are no burden on two cores.
    maxWorkers: 3,
    sequence: { sequencer: LongestFirst },
    projects: [
      { extends: true, test: { name: 'apart', include: ['tests/**/*.test.{ts,tsx}'], exclude: TOGETHER } },
      { extends: true, test: { name: 'together', include: TOGETHER, isolate: false } },
    ],
  },
});
