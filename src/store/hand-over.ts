import type { Head } from '../core/log/chain';
import { isHeardClip } from '../core/log/heard-clip';
import { type CheckedJobFile, type FileBlob, printJobFile } from '../core/log/job-file';
import type { LogStore, StoredBlob, StoredJob, StoreFault } from '../core/log/log-store';
import { fail, ok, type Result } from '../core/result';
import { fromBase64, toBase64 } from './base64';

/** The job as a hand-over file. The log goes out as it is, verified or not: a damaged one must still be able to leave. */
export async function exportJob(
  store: Pick<LogStore, 'read' | 'blobs'>,
  jobId: string,
  withBlobs: boolean,
): Promise<Result<string, StoreFault>> {
  const job = await store.read(jobId);
  if (!job.ok) return job;
  const blobs = withBlobs ? await store.blobs(jobId) : ok([]);
  return blobs.ok ? ok(jobFileText(job.value, blobs.value)) : blobs;
}

/** The same from memory: for a log that could not be stored. */
export function jobFileText({ card, head, texts }: StoredJob, blobs: readonly StoredBlob[] = []): string {
  // The sound of what was heard is for whoever asked for it here; it leaves with nobody.
  const leaving = blobs.filter(({ id }) => !isHeardClip(id));
  const coded = leaving.map(({ id, mime, bytes }) => ({ id, mime, base64: toBase64(bytes) }));
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

type Importing = Pick<LogStore, 'read' | 'adopt' | 'blob' | 'putBlob'>;

/**
 * Takes a hand-over file in, checked before: the log is taken whole or not at all. Two logs of one job are never
 * merged: a fork is refused until `keep` says which one stays, and the other is then gone unless it was exported.
 */
export async function importJob(
  store: Importing,
  file: CheckedJobFile,
  keep: 'here' | 'file' | 'ask' = 'ask',
): Promise<Result<Imported, ImportFault>> {
  const jobId = file.card.id;
  const here = await store.read(jobId);
  if (!here.ok) {
    return here.error.code === 'no-such-job' ? adopt(store, file, null, 'new') : here;
  }
  const { head, texts } = here.value;
  const shared = sharedLength(texts, file.texts);
  if (shared === file.texts.length) {
    return addBlobs(store, file, shared === texts.length ? 'same' : 'behind');
  }
  if (shared === texts.length) return adopt(store, file, head, 'extended');
  switch (keep) {
    case 'ask':
      return fail({ code: 'forked', jobId, seq: shared + 1, here: head, file: file.head });
    case 'here':
      return ok({ jobId, outcome: 'kept-here' });
    case 'file':
      return adopt(store, file, head, 'replaced');
  }
}

async function adopt(
  store: Importing,
  file: CheckedJobFile,
  expected: Head | null,
  outcome: Imported['outcome'],
): Promise<Result<Imported, StoreFault>> {
  const entries = file.entries.map(({ seq, prev, hash }, index) => ({
    seq,
    prev,
    hash,
    text: file.texts[index] ?? '',
  }));
  const adopted = await store.adopt(file.card, entries, file.blobs.map(decoded), expected);
  return adopted.ok ? ok({ jobId: file.card.id, outcome }) : adopted;
}

/** The log is here already, but the file may bring clips or photos that an earlier one left out. */
async function addBlobs(
  store: Importing,
  file: CheckedJobFile,
  outcome: Imported['outcome'],
): Promise<Result<Imported, StoreFault>> {
  const jobId = file.card.id;
  for (const blob of file.blobs) {
    const here = await store.blob(jobId, blob.id);
    const result = here.ok && here.value === null ? await store.putBlob(jobId, decoded(blob)) : here;
    if (!result.ok) return result;
  }
  return ok({ jobId, outcome });
}

const decoded = ({ id, mime, base64 }: FileBlob): StoredBlob => ({ id, mime, bytes: fromBase64(base64) });

function sharedLength(some: readonly string[], others: readonly string[]): number {
  const differs = some.findIndex((text, index) => text !== others[index]);
  return differs < 0 ? some.length : differs;
}
