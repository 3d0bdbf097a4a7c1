import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { decodeWav } from '../../voice/flite/wav';

const line = z.object({
  file: z.string(),
  set: z.enum(['orders', 'words', 'digits', 'noise']),
  text: z.string().nullable().optional(),
  /** Who spoke, where that is known. */
  speaker: z.string().optional(),
  slots: z.record(z.string(), z.string()).optional(),
});

export type Recording = z.infer<typeof line>;

/** What the people in the recordings speak. */
export const RECORDED_LANGUAGE = 'en';

/** A folder of recordings with a manifest.jsonl, and the sound of its files at 16 kHz. */
export class Corpus {
  readonly recordings: readonly Recording[];
  readonly #folder: string;

  constructor(folder: string) {
    this.#folder = folder;
    const lines = readFileSync(join(folder, 'manifest.jsonl'), 'utf8').trim().split('\n');
    this.recordings = lines.map((text) => line.parse(JSON.parse(text)));
  }

  text(name: string): string {
    return readFileSync(join(this.#folder, name), 'utf8');
  }

  sound(file: string): Float32Array {
    const decoded = decodeWav(readFileSync(join(this.#folder, file)));
    if (!decoded.ok || decoded.value.rateHz !== 16_000) throw new Error(`${file} is not a mono 16-bit WAV at 16 kHz`);
    return decoded.value.samples;
  }
}
