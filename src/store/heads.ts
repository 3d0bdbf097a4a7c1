import { type Head, headOf } from '../core/log/chain';
import type { SealedText } from '../core/log/envelope';
import type { StoreFault } from '../core/log/log-store';

export const sameHead = (one: Head | null, other: Head | null): boolean =>
  one?.seq === other?.seq && one?.hash === other?.hash;

/** The head that a log has after these entries. */
export function headAfter(before: Head, entries: readonly SealedText[]): Head {
  const last = entries.at(-1);
  return last ? headOf(last) : before;
}

/** What forbids adding these entries to a log that ends at `head`, or null. */
export function appendFault(
  jobId: string,
  head: Head | undefined,
  expectedSeq: number,
  entries: readonly SealedText[],
): StoreFault | null {
  if (!head) return { code: 'no-such-job', jobId };
  const expected = { seq: expectedSeq, hash: entries[0]?.prev ?? head.hash };
  return sameHead(expected, head) ? null : { code: 'conflict', jobId, expected, actual: head };
}

/**
 * A connection can be lost between the commit and the word of it. The log then ends in an entry of this very batch: it
 * was stored after all, and the conflict is none.
 */
export function ownEntry(fault: StoreFault, batch: readonly SealedText[]): SealedText | undefined {
  if (fault.code !== 'conflict') return undefined;
  return batch.find(({ seq, hash }) => seq === fault.actual?.seq && hash === fault.actual.hash);
}
