import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname } from 'node:path';
import type { EarLanguage } from '../speech/ear/armed-grammar';
import { Ear, type EarHost } from '../speech/ear/ear';
import type { Lexicon } from '../speech/ear/messages';

const require = createRequire(import.meta.url);

/** Where Node finds the ear's files: in the installed packages. */
export function nodeEarHost(language: EarLanguage, decoys: readonly string[] = []): EarHost {
  return {
    modelBase: `${dirname(require.resolve('soundswallower'))}/model/`,
    denoiserWasm: async () => {
      const bytes = await readFile(require.resolve('@jitsi/rnnoise-wasm/dist/rnnoise.wasm'));
      return bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength);
    },
    language,
    decoys,
  };
}

/** The ear of the browser, loaded in Node. Throws where the model or the lexicon is broken: that is a bug here. */
export async function earForNode(
  language: EarLanguage,
  lexicon: Lexicon,
  decoys: readonly string[] = [],
): Promise<Ear> {
  const ear = new Ear(nodeEarHost(language, decoys));
  const failed = (await ear.load(lexicon)).find(({ type }) => type === 'failed');
  if (failed) throw new Error(`the ear did not load: ${JSON.stringify(failed)}`);
  return ear;
}
