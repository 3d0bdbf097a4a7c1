import type { Entry } from '../job/entry';
import { evolve } from '../job/evolve';
import { type LooseEnd, newJob } from '../job/job';
import type { Plan } from '../job/plan';
import { standing } from './standing';

/** One thing that came off, was opened, lost or put off, and the entry that settled it. */
export type LedgerLine = {
  readonly end: string;
  readonly what: LooseEnd;
  readonly opened: Entry;
  /** Null while it is still open. */
  readonly closed: Entry | null;
};

/** Every loose end of the job in the order they arose. An end that was opened again stands in it again. */
export function endsLedger(plan: Plan, entries: readonly Entry[]): readonly LedgerLine[] {
  const lines: LedgerLine[] = [];
  const open = new Map<string, number>();
  let job = newJob(plan);
  for (const entry of standing(entries)) {
    const next = evolve(job, entry);
    for (const [end, what] of next.ends) {
      if (job.ends.has(end)) continue;
      open.set(end, lines.length);
      lines.push({ end, what, opened: entry, closed: null });
    }
    for (const end of job.ends.keys()) {
      const at = open.get(end);
      const line = at === undefined ? undefined : lines[at];
      if (next.ends.has(end) || at === undefined || !line) continue;
      lines[at] = { ...line, closed: entry };
      open.delete(end);
    }
    job = next;
  }
  return lines;
}
