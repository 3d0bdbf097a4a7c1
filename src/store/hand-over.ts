import type { Head } from '../core/log/chain';
import type { SealedText } from '../core/log/envelope';
import { isHeardClip } from '../core/log/heard-clip';
import { type CheckedJobFile, type FileBlob, printJobFile } from '../core/log/job-file';
import type { LogStore, StoredBlob, StoredJob, StoreFault } from '../core/log/log-store';
import { atOnce, eachOf, type Pieces } from '../core/pieces';
import { fail, ok, type Result } from '../core/result';
import { fromBase64, toBase64 } from './base64';

/** The job as a hand-over file. The log goes out as it is, verified or not: a damaged one must still be able to leave. */
export async function exportJob(
  store: Pick<LogStore, 'read' | 'blobs'>,
  jobId: string,
  withBlobs: boolean,
  run: Run = async (work) => atOnce(work),
): Promise<Result<string, StoreFault>> {
  const job = await store.read(jobId);
  if (!job.ok) return job;
  const blobs = withBlobs ? await store.blobs(jobId) : ok([]);
  return blobs.ok ? ok(await run(printing(job.value, blobs.value))) : blobs;
}

/** Carries out work in pieces, at once or with pauses. */
export type Run = <T>(work: Pieces<T>) => Promise<T>;

/** The same from memory: for a log that could not be stored. A clip or a picture a piece. */
export function* printing({ card, head, texts }: StoredJob, blobs: readonly StoredBlob[]): Pieces<string> {
  // The sound of what was heard is for whoever asked for it here; it leaves with nobody.
  const leaving = blobs.filter(({ id }) => !isHeardClip(id));
  const coded = yield* eachOf(leaving, ({ id, mime, bytes }) => ({ id, mime, base64: toBase64(bytes) }));
  return printJobFile({ card, head, texts, blobs: coded });
}

export type Imported = {
  readonly jobId: string;
  /**
   * `new`: it was not here. `extended`: the file goes on from the log here. `same` and `behind`: all of the file's log is
   * here already. `kept-here`, `replaced`: a fork, decided as asked.
   */
  readonly outcome: 'new' | 'extended' | 'same' | 'behind' | 'kept-here' | 'replaced';
};

export type ImportFault =
  /** Both went on from the same entry, differently. `seq` is the first that differs; ask which of the two to keep. */
  | {
      readonly code: 'forked';
      readonly jobId: string;
      readonly seq: number;
      readonly here: Head;
      readonly file: Head;
    }
  | StoreFault;

export type Brought = {
  /** Its clips and pictures, where they have been decoded already. */
  readonly blobs?: readonly StoredBlob[];
  /** Told the share that is written. */
  readonly tell?: (share: number) => void;
};

type Importing = Pick<LogStore, 'read' | 'adopt' | 'blob' | 'putBlob'>;

/**
 * Takes a hand-over file in, checked before: the log is taken whole or not at all. Two logs of one job are never
 * merged: a fork is refused until `keep` says which one stays, and the other is then gone unless it was exported.
 */
export async function importJob(
  store: Importing,
  file: CheckedJobFile,
  keep: 'here' | 'file' | 'ask' = 'ask',
  { blobs = file.blobs.map(decoded), tell }: Brought = {},
): Promise<Result<Imported, ImportFault>> {
  const jobId = file.card.id;
  const adopt = async (expected: Head | null, outcome: Imported['outcome']) => {
    const adopted = await store.adopt(file.card, sealsOf(file), blobs, expected, tell);
    return adopted.ok ? ok({ jobId, outcome }) : adopted;
  };
  const here = await store.read(jobId);
  if (!here.ok) {
    return here.error.code === 'no-such-job' ? adopt(null, 'new') : here;
  }
  const { head, texts } = here.value;
  const shared = sharedLength(texts, file.texts);
  if (shared === file.texts.length) {
    return addBlobs(store, jobId, blobs, shared === texts.length ? 'same' : 'behind');
  }
  if (shared === texts.length) return adopt(head, 'extended');
  switch (keep) {
    case 'ask':
      return fail({ code: 'forked', jobId, seq: shared + 1, here: head, file: file.head });
    case 'here':
      return ok({ jobId, outcome: 'kept-here' });
    case 'file':
      return adopt(head, 'replaced');
  }
}

const sealsOf = ({ entries, texts }: CheckedJobFile): readonly SealedText[] =>
  entries.map(({ seq, prev, hash }, index) => ({ seq, prev, hash, text: texts[index] ?? '' }));

/** The clips and pictures of a file, one a piece. */
export const decoding = ({ blobs }: CheckedJobFile): Pieces<readonly StoredBlob[]> => eachOf(blobs, decoded);

/** The log is here already, but the file may bring clips or photos that an earlier one left out. */
async function addBlobs(
  store: Importing,
  jobId: string,
  blobs: readonly StoredBlob[],
  outcome: Imported['outcome'],
): Promise<Result<Imported, StoreFault>> {
  for (const blob of blobs) {
    const here = await store.blob(jobId, blob.id);
    const result = here.ok && here.value === null ? await store.putBlob(jobId, blob) : here;
    if (!result.ok) return result;
  }
  return ok({ jobId, outcome });
}

const decoded = ({ id, mime, base64 }: FileBlob): StoredBlob => ({ id, mime, bytes: fromBase64(base64) });

function sharedLength(some: readonly string[], others: readonly string[]): number {
  const differs = some.findIndex((text, index) => text !== others[index]);
  return differs < 0 ? some.length : differs;
}
