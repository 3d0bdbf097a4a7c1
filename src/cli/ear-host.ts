import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname } from 'node:path';
import type { HearingAid } from '../core/voice-profile/voice-profile';
import { Ear, type EarHost } from '../speech/ear/ear';
import type { EarLanguage } from '../speech/ear/messages';
import type { Observer } from '../speech/ear/recognition';
import { TUNING, type Tuning } from '../speech/ear/tuning';

const require = createRequire(import.meta.url);

/** Where Node finds the ear's files: in the installed packages. */
const NODE: EarHost = {
  modelBase: `${dirname(require.resolve('soundswallower'))}/model/`,
  denoiserWasm: async () => {
    const bytes = await readFile(require.resolve('@jitsi/rnnoise-wasm/dist/rnnoise.wasm'));
    return bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength);
  },
  modelFile: readFile,
};

/** The ear of the browser, loaded in Node. Throws where the model or the lexicon is broken: that is a bug here. */
export async function earForNode(
  language: EarLanguage,
  tuning: Tuning = TUNING,
  observe?: Observer,
  aid: HearingAid | null = null,
): Promise<Ear> {
  const ear = new Ear(NODE, tuning, observe);
  const failed = (await ear.load(language, aid)).find(({ type }) => type === 'failed');
  if (failed) throw new Error(`the ear did not load: ${JSON.stringify(failed)}`);
  return ear;
}
