import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname } from 'node:path';
import { type Acoustics, readAcoustics } from '../../../src/speech/ear/adapting/acoustics';

export const MODEL_BASE = `${dirname(createRequire(import.meta.url).resolve('soundswallower'))}/model/`;

/** A file of a model folder, as it is installed. */
export const modelFile =
  (folder: string) =>
  (name: string): Promise<Uint8Array> =>
    readFile(`${MODEL_BASE}${folder}/${name}`);

export async function acousticsOf(folder: string): Promise<Acoustics> {
  const read = await readAcoustics(modelFile(folder));
  if (!read.ok) throw new Error(read.error);
  return read.value;
}
