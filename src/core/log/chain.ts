import { atOnce, type Pieces } from '../pieces';
import type { Hash } from '../ports';
import { fail, ok, type Result } from '../result';
import {
  type Body,
  type Entry,
  type EntryFault,
  type Moment,
  NO_PREVIOUS,
  type SealedText,
  type StoredEntry,
  seal,
  unseal,
} from './envelope';
import { LOG_VERSION } from './version';

/** The last entry of a log, by number and hash; together they stand for everything before. */
export type Head = { readonly seq: number; readonly hash: string };

export const EMPTY: Head = { seq: 0, hash: NO_PREVIOUS };

/** The next entries of a log that ends at `head`, in their order and all of one moment. */
export function sealAfter<B extends Body>(
  head: Head,
  bodies: readonly B[],
  moment: Moment,
  hash: Hash,
): readonly { readonly entry: Entry<B>; readonly sealed: SealedText }[] {
  let last = head;
  return bodies.map((body) => {
    const closed = seal(body, { v: LOG_VERSION, seq: last.seq + 1, prev: last.hash, ...moment }, hash);
    last = headOf(closed.sealed);
    return closed;
  });
}

export const headOf = ({ seq, hash }: Head): Head => ({ seq, hash });

export type ChainProblem =
  | EntryFault
  | { readonly code: 'gap'; readonly expected: number; readonly given: number }
  | { readonly code: 'broken-chain'; readonly expected: string; readonly given: string }
  /** The texts do not end at the head that the log is known to have reached. */
  | { readonly code: 'cut-short'; readonly expected: Head; readonly given: Head };

/** The first thing wrong with a log: `index` counts the texts given from 0, and all before it is `good`. */
export type ChainFault = {
  readonly index: number;
  readonly problem: ChainProblem;
  readonly good: readonly StoredEntry[];
};

/**
 * Holds every stored text against its hash, its number and the entry before it. A change to any byte is found at its own
 * entry; an entry rewritten with a new hash is found at the one after it, or at the end where `head` is given.
 */
export function verifyChain(
  texts: readonly string[],
  hash: Hash,
  head: Head | null = null,
  known: number = LOG_VERSION,
): Result<readonly StoredEntry[], ChainFault> {
  return atOnce(verifying(texts, hash, head, known));
}

/** The same, an entry a piece. */
export function* verifying(
  texts: readonly string[],
  hash: Hash,
  head: Head | null = null,
  known: number = LOG_VERSION,
): Pieces<Result<readonly StoredEntry[], ChainFault>> {
  const good: StoredEntry[] = [];
  let last = EMPTY;
  for (const [index, text] of texts.entries()) {
    const read = unseal(text, hash, known);
    if (!read.ok) return fail({ index, problem: read.error, good });
    const problem = misplaced(read.value, last);
    if (problem) return fail({ index, problem, good });
    good.push(read.value);
    last = headOf(read.value);
    yield good.length / texts.length;
  }
  if (head === null || (head.seq === last.seq && head.hash === last.hash)) return ok(good);
  return fail({ index: texts.length, problem: { code: 'cut-short', expected: head, given: last }, good });
}

function misplaced({ seq, prev }: StoredEntry, last: Head): ChainProblem | null {
  if (seq !== last.seq + 1) return { code: 'gap', expected: last.seq + 1, given: seq };
  if (prev !== last.hash) return { code: 'broken-chain', expected: last.hash, given: prev };
  return null;
}
