import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';

const read = (name: string): Buffer => readFileSync(join(import.meta.dirname, name));

export const TONE_MODEL = read('tone-model.tar.gz');
export const STATIC_MODEL = read('tone-model-static.tar.gz');

export const blobOf = (bytes: Uint8Array): Blob => new Blob([new Uint8Array(bytes)]);

/** The archive with its tar stream changed, gzip and its checksum made anew: what only the tar reader can notice. */
export const repacked = (archive: Buffer, change: (tar: Buffer) => Uint8Array): Buffer =>
  gzipSync(change(gunzipSync(archive)));

export type Files = Readonly<Record<string, string | Uint8Array>>;

/** Packed by the system's own tar, in the format named. */
export function packed(files: Files, format: 'ustar' | 'gnu' | 'pax' | 'v7' = 'ustar', dot = false): Buffer {
  const folder = mkdtempSync(join(tmpdir(), 'archive-'));
  try {
    for (const [path, content] of Object.entries(files)) {
      mkdirSync(dirname(join(folder, 'in', path)), { recursive: true });
      writeFileSync(join(folder, 'in', path), content);
    }
    const tops = dot ? ['.'] : [...new Set(Object.keys(files).map((path) => path.split('/')[0] ?? ''))];
    execFileSync('tar', [`--format=${format}`, '-czf', 'out.tar.gz', '-C', 'in', ...tops], { cwd: folder });
    return readFileSync(join(folder, 'out.tar.gz'));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** The files of a model that takes a grammar, as far as the check looks at them. */
export function modelFiles(folder: string): Record<string, string> {
  const names = ['am/final.mdl', 'conf/mfcc.conf', 'conf/model.conf', 'graph/HCLr.fst', 'graph/Gr.fst'];
  return {
    ...Object.fromEntries(
      [...names, 'graph/phones/word_boundary.int'].map((name) => [`${folder}/${name}`, 'something']),
    ),
    [`${folder}/graph/words.txt`]: '<eps> 0\nstop 1\ndone 2\n[unk] 3\n',
  };
}
