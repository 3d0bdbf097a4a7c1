import type { Entry } from '../job/entry';
import { evolve } from '../job/evolve';
import { type Job, type LooseEnd, newJob } from '../job/job';
import type { Plan } from '../job/plan';
import { runningFold } from './running-fold';

/** One thing that came off, was opened, lost or put off, and the entry that settled it. */
export type LedgerLine = {
  readonly end: string;
  readonly what: LooseEnd;
  readonly opened: Entry;
  /** Null while it is still open. */
  readonly closed: Entry | null;
};

type Ledger = { readonly job: Job; readonly lines: LedgerLine[]; readonly open: Map<string, number> };

/**
 * Every loose end of a job in the order they arose, from the entries that stand. An end that was opened again stands in
 * it again.
 */
export function endsLedger(plan: Plan): (live: readonly Entry[]) => readonly LedgerLine[] {
  const follow = runningFold<Ledger>(() => ({ job: newJob(plan), lines: [], open: new Map() }), further);
  return (live) => follow(live).lines;
}

function further({ job, lines, open }: Ledger, entry: Entry): Ledger {
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
  return { job: next, lines, open };
}
