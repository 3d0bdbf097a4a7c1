import { fail, ok, type Result } from '../../core/result';
import type { ArchiveFault } from './archive-fault';
import { modelFolder } from './layout';
import { wordsOfGraph, wordsOfTable } from './symbol-table';
import { type FileSink, type TarFile, TarReader } from './tar';

export type CheckedArchive = {
  /** The top folder, by which models are known. */
  readonly folder: string;
  readonly bytes: number;
  /** Of the archive as given, in lower-case hex. */
  readonly sha256: string;
  /** Every word the model knows. */
  readonly words: readonly string[];
};

const MEBIBYTE = 1024 * 1024;
/** Models of this kind are some forty megabytes; those that are far larger would not fit beside the app in a tablet. */
const MOST_BYTES = { archive: 200 * MEBIBYTE, unpacked: 600 * MEBIBYTE } as const;
/** Of a graph only the table of words is wanted, at its beginning; of a words.txt all. */
const MOST_WORDS_BYTES = 32 * MEBIBYTE;

const WORD_TABLE = /^[^/]+\/graph\/words\.txt$/;
const WORD_GRAPH = /^[^/]+\/graph\/Gr\.fst$/;

/** Reads an archive from end to end before anything else touches it. `done` counts the bytes read so far. */
export async function checkArchive(
  archive: Blob,
  progress: (done: number, total: number) => void = () => undefined,
): Promise<Result<CheckedArchive, ArchiveFault>> {
  if (archive.size === 0) return fail({ code: 'archive-empty' });
  if (archive.size > MOST_BYTES.archive) {
    return fail({ code: 'archive-too-large', of: 'archive', most: MOST_BYTES.archive });
  }
  const start = new Uint8Array(await archive.slice(0, 512).arrayBuffer());
  if (start[0] !== 0x1f || start[1] !== 0x8b) return fail({ code: 'archive-not-gzip', looksLike: kindOf(start) });

  const table = new Gathered(MOST_WORDS_BYTES);
  const graph = new Gathered(MOST_WORDS_BYTES);
  const reader = new TarReader(({ path }: TarFile): FileSink => {
    if (WORD_TABLE.test(path)) return (part) => table.push(part);
    return WORD_GRAPH.test(path) ? (part) => graph.push(part) : null;
  });
  const read = await readThrough(archive, reader, progress);
  if (!read.ok) return read;
  const folder = modelFolder(reader.files);
  if (!folder.ok) return folder;
  const listed = wordsOfTable(new TextDecoder().decode(table.bytes()));
  const words = listed.length > 0 ? listed : wordsOfGraph(graph.bytes());
  if (!words || words.length === 0) return fail({ code: 'archive-no-vocabulary' });
  return ok({ folder: folder.value, bytes: archive.size, sha256: await sha256Of(archive), words });
}

async function readThrough(
  archive: Blob,
  reader: TarReader,
  progress: (done: number, total: number) => void,
): Promise<Result<void, ArchiveFault>> {
  let packed = 0;
  let unpacked = 0;
  const counted = new TransformStream<Uint8Array<ArrayBuffer>, Uint8Array<ArrayBuffer>>({
    transform: (part, onward) => {
      packed += part.length;
      progress(packed, archive.size);
      onward.enqueue(part);
    },
  });
  const parts = archive.stream().pipeThrough(counted).pipeThrough(new DecompressionStream('gzip')).getReader();
  try {
    for (;;) {
      const { done, value } = await parts.read();
      if (done) break;
      unpacked += value.length;
      if (unpacked > MOST_BYTES.unpacked) {
        return fail({ code: 'archive-too-large', of: 'unpacked', most: MOST_BYTES.unpacked });
      }
      const taken = reader.push(value);
      if (!taken.ok) return taken;
    }
  } catch {
    // The decompressor tells a missing end and a wrong checksum by throwing, in words that differ by browser.
    return fail({ code: 'archive-cut', at: unpacked });
  } finally {
    // It may have failed already, which the loop has seen.
    await parts.cancel().catch(() => undefined);
  }
  return reader.isWhole ? ok(undefined) : fail({ code: 'archive-cut', at: unpacked });
}

function kindOf(start: Uint8Array): Extract<ArchiveFault, { code: 'archive-not-gzip' }>['looksLike'] {
  const text = new TextDecoder('latin1').decode(start);
  if (text.startsWith('PK')) return 'zip';
  if (text.slice(257, 262) === 'ustar') return 'tar';
  return /^\s*<(!doctype|html)/i.test(text) ? 'web-page' : 'something-else';
}

async function sha256Of(archive: Blob): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', await archive.arrayBuffer());
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** The first bytes of a file, up to a bound. */
class Gathered {
  readonly #most: number;
  readonly #parts: Uint8Array[] = [];
  #size = 0;

  constructor(most: number) {
    this.#most = most;
  }

  push(part: Uint8Array): void {
    const kept = part.subarray(0, this.#most - this.#size);
    if (kept.length > 0) this.#parts.push(kept);
    this.#size += kept.length;
  }

  bytes(): Uint8Array {
    const all = new Uint8Array(this.#size);
    let at = 0;
    for (const part of this.#parts) {
      all.set(part, at);
      at += part.length;
    }
    return all;
  }
}
