import { atOnce, type Pieces } from '../pieces';
import type { Hash } from '../ports';
import { fail, ok, type Result } from '../result';
import { type ChainProblem, type Head, verifying } from './chain';
import type { StoredEntry } from './envelope';
import { glimpse, isObject, jobFileShape } from './job-file-shape';
import type { JobCard } from './log-store';

/**
 * The hand-over file: one JSON object that carries a whole job from one machine to another.
 *
 *     { "format": "wrenchside-job", "version": 1,
 *       "job":     { "id", "title", "procedure", "created", "who", "closed" },
 *       "head":    { "seq", "hash" },
 *       "entries": [ "<text of entry 1>", "<text of entry 2>", … ],
 *       "blobs":   [ { "id", "mime", "base64" }, … ] }
 *
 * `entries` holds the stored texts as strings, to the byte, so that their hashes still hold. `head` is the last entry's
 * number and hash and tells a file that was cut short. `blobs` may be empty or left out: clips and photos are optional.
 * The card is a label outside the chain; the log itself says what happened.
 */
export type JobFile = {
  readonly card: JobCard;
  readonly head: Head;
  readonly texts: readonly string[];
  readonly blobs: readonly FileBlob[];
};

export type FileBlob = { readonly id: string; readonly mime: string; readonly base64: string };

/** A job file that has been checked through: every entry is whole and in its place. */
export type CheckedJobFile = JobFile & { readonly entries: readonly StoredEntry[] };

/** What is wrong, and where: `at` is a JSON Pointer into the file, `given` a short piece of what stood there. */
export type JobFileIssue = { readonly at: string; readonly given: string } & (
  | { readonly code: 'not-json' | 'not-a-job-file' | 'missing' | 'wrong-type' | 'not-base64' | 'duplicate' }
  | { readonly code: 'newer-file'; readonly known: number }
  | { readonly code: 'too-big'; readonly most: number }
  /** `good` counts the entries before the first bad one; those can still be read. */
  | { readonly code: 'broken-log'; readonly problem: ChainProblem; readonly good: number }
);

const FORMAT = 'wrenchside-job';
const VERSION = 1;

/** In UTF-16 code units: a long job with an hour of clips stays below it. */
export const LONGEST_FILE = 400_000_000;

export function printJobFile({ card, head, texts, blobs }: JobFile): string {
  return JSON.stringify({ format: FORMAT, version: VERSION, job: card, head, entries: texts, blobs }, null, 1);
}

/** What a file from anywhere holds, before anything is known of it. Never throws. */
export function readJson(text: string): Result<unknown, readonly JobFileIssue[]> {
  if (text.length > LONGEST_FILE) {
    return fail([{ code: 'too-big', at: '', given: `${text.length}`, most: LONGEST_FILE }]);
  }
  try {
    return ok(JSON.parse(text));
  } catch (error) {
    return fail([{ code: 'not-json', at: '', given: error instanceof Error ? error.message : '' }]);
  }
}

/** Checks a job file through. Never throws; all issues of shape are collected, and the log is verified when there are none. */
export function checkJobFile(root: unknown, hash: Hash): Result<CheckedJobFile, readonly JobFileIssue[]> {
  return atOnce(checkingJobFile(root, hash));
}

/** The same, an entry a piece; the shape before that is read at once. */
export function* checkingJobFile(root: unknown, hash: Hash): Pieces<Result<CheckedJobFile, readonly JobFileIssue[]>> {
  if (!isObject(root) || root.format !== FORMAT) {
    return fail([{ code: 'not-a-job-file', at: '/format', given: glimpse(isObject(root) ? root.format : root) }]);
  }
  if (typeof root.version === 'number' && root.version > VERSION) {
    return fail([{ code: 'newer-file', at: '/version', given: `${root.version}`, known: VERSION }]);
  }
  const file = jobFileShape(root);
  if (!file.ok) return file;
  const chain = yield* verifying(file.value.texts, hash, file.value.head);
  if (chain.ok) return ok({ ...file.value, entries: chain.value });
  const { index, problem, good } = chain.error;
  const given = glimpse(file.value.texts[index]);
  return fail([{ code: 'broken-log', at: `/entries/${index}`, given, problem, good: good.length }]);
}
