import type { Entry, EntryBody } from '../../core/job/entry';
import { isEntryBody, strayEntry } from '../../core/job/entry-guard';
import { planOf } from '../../core/job/plan';
import type { Head } from '../../core/log/chain';
import type { CheckedJobFile } from '../../core/log/job-file';
import type { JobCard, LogStore, StoredJob, StoreFault } from '../../core/log/log-store';
import { currentFormat, type LogFault, readLog, upgrading } from '../../core/log/upgrade';
import type { Hash } from '../../core/ports';
import type { ToldIssue } from '../../core/procedure/finding-words';
import type { Procedure } from '../../core/procedure/procedure';
import { fail, ok, type Result } from '../../core/result';
import type { Run } from '../../store/hand-over';
import { checkDocument, tellIssues } from '../library';

export type OpenFault =
  | { readonly code: 'procedure-broken'; readonly issues: readonly ToldIssue[] }
  | { readonly code: 'log-damaged'; readonly damage: Damage }
  /** The document is not in the language that is heard and spoken: its words would be taken and said wrongly. */
  | { readonly code: 'other-language'; readonly language: string }
  | { readonly code: 'store'; readonly fault: StoreFault };

/** The first bad entry of a log, by its number, and what is wrong with it. */
export type Damage = { readonly entry: number; readonly why: LogFault<EntryBody>['problem']['code'] | 'stray-entry' };

/** A job as its log tells it. Of a damaged log it is the part before the first bad entry, and it may only be read. */
export type JobLog = {
  readonly card: JobCard;
  readonly procedure: Procedure;
  readonly entries: readonly Entry[];
  readonly texts: readonly string[];
  readonly head: Head;
  readonly damage: Damage | null;
};

/** Reads a job with the document it was begun with, which is part of its log. */
export async function readJob(
  store: Pick<LogStore, 'read'>,
  hash: Hash,
  id: string,
  language: string,
  check = checkDocument,
): Promise<Result<JobLog, OpenFault>> {
  const stored = await store.read(id);
  return stored.ok ? jobLogOf(stored.value, hash, language, check) : fail({ code: 'store', fault: stored.error });
}

const FORMAT = currentFormat<EntryBody>(isEntryBody);

/** The same from what a store gives; what is wrong with its document is told in `language`. Nothing in it is trusted: seals, fields and references are all checked. */
export async function jobLogOf(
  job: StoredJob,
  hash: Hash,
  language: string,
  check = checkDocument,
): Promise<Result<JobLog, OpenFault>> {
  return understood(job, readLog<EntryBody>(job.texts, hash, FORMAT, job.head), language, check);
}

/** The same from a file whose seals have been verified; `run` carries out what takes long. */
export async function jobLogOfFile(
  file: CheckedJobFile,
  language: string,
  run: Run,
): Promise<Result<JobLog, OpenFault>> {
  const log = await run(upgrading<EntryBody>(file.entries, FORMAT));
  return understood(file, log, language, checkDocument);
}

async function understood(
  { card, head, texts }: StoredJob,
  log: Result<readonly Entry[], LogFault<EntryBody>>,
  language: string,
  check: typeof checkDocument,
): Promise<Result<JobLog, OpenFault>> {
  const good: readonly Entry[] = log.ok ? log.value : log.error.good;
  const broken = log.ok ? null : { entry: log.error.index + 1, why: log.error.problem.code };
  const [first] = good;
  if (first?.kind !== 'job-started') {
    return fail({ code: 'log-damaged', damage: broken ?? { entry: 1, why: 'stray-entry' } });
  }
  const checked = await check(first.text, card.procedure);
  if (!checked.ok) return fail({ code: 'procedure-broken', issues: await tellIssues(checked.error, language) });
  const procedure = checked.value;
  const stray = strayEntry(planOf(procedure), good);
  const entries = stray ? good.slice(0, stray.seq - 1) : good;
  const damage: Damage | null = stray ? { entry: stray.seq, why: 'stray-entry' } : broken;
  return ok({ card, procedure, entries, texts, head, damage });
}
