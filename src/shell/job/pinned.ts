import type { Entry } from '../../core/job/entry';

/**
 * Whether the document of a job is another by now than the one in its log, which is the one it is worked on. A document
 * that is gone (null) is no other one.
 */
export function hasOtherText(entries: readonly Entry[], now: string | null): boolean {
  const [first] = entries;
  return now !== null && first?.kind === 'job-started' && first.text !== now;
}
