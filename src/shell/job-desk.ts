import { announce } from '../core/job/announce';
import { durability, ENTRY_KINDS, type Entry, type EntryBody, type Moment } from '../core/job/entry';
import { fold } from '../core/job/evolve';
import { planOf } from '../core/job/plan';
import type { Head } from '../core/log/chain';
import type { JobCard, LogStore, StoreFault } from '../core/log/log-store';
import { byKind, currentFormat, readLog } from '../core/log/upgrade';
import type { Reply } from '../core/phrasing/reply';
import { reply, text } from '../core/phrasing/reply';
import type { Clock, Hash, Recogniser, Voice } from '../core/ports';
import type { ProcedureIssue } from '../core/procedure/issue';
import type { Procedure } from '../core/procedure/procedure';
import { fail, ok, type Result } from '../core/result';
import type { Tongue } from '../core/tongue';
import { taught } from '../core/view/build-bench';
import { Desk, type DeskParts } from '../machine/desk';
import { LogWriter } from '../store/log-writer';
import { checkDocument } from './library';

/** What a desk needs that does not depend on the job. */
export type DeskHost = {
  readonly store: LogStore;
  readonly hash: Hash;
  readonly clock: Clock;
  readonly session: string;
  readonly newId: () => string;
  readonly tongue: Tongue;
  readonly recogniser: Recogniser;
  readonly voice: Voice;
  readonly after: DeskParts['after'];
  readonly perform: DeskParts['perform'];
};

export type OpenFault =
  | { readonly code: 'procedure-broken'; readonly issues: readonly ProcedureIssue[] }
  | { readonly code: 'log-damaged'; readonly at: number }
  | { readonly code: 'store'; readonly fault: StoreFault };

export type OpenJob = {
  readonly card: JobCard;
  readonly desk: Desk;
  readonly writer: LogWriter<EntryBody>;
  readonly greeting: readonly Reply[];
};

export type NewJob = { readonly text: string; readonly file: string; readonly machine: string; readonly who: string };

/** Begins a job: the document is checked and pinned in the first entry, which is durable before anything is said. */
export async function beginJob(host: DeskHost, start: NewJob): Promise<Result<OpenJob, OpenFault>> {
  const checked = await checkDocument(start.text, start.file);
  if (!checked.ok) return fail({ code: 'procedure-broken', issues: checked.error });
  const procedure = checked.value;
  const { id: procedureId, title } = procedure;
  const id = host.newId();
  const card: JobCard = {
    id,
    title,
    procedure: procedureId,
    created: host.clock.wall(),
    who: start.who,
    closed: false,
  };
  const made = await host.store.createJob(card);
  if (!made.ok) return fail({ code: 'store', fault: made.error });
  const first: EntryBody = {
    kind: 'job-started',
    job: id,
    procedure: procedureId,
    text: start.text,
    textHash: host.hash(start.text),
    machine: start.machine,
  };
  return openSession(host, card, procedure, writerFor(host, id), [], [first, { kind: 'session-opened' }]);
}

/** Takes a job up again from its log, on the document it was begun with. */
export async function resumeJob(host: DeskHost, id: string): Promise<Result<OpenJob, OpenFault>> {
  const stored = await host.store.read(id);
  if (!stored.ok) return fail({ code: 'store', fault: stored.error });
  const { card, head, texts } = stored.value;
  const log = readLog<EntryBody>(texts, host.hash, currentFormat(byKind<EntryBody>(ENTRY_KINDS)), head);
  if (!log.ok) return fail({ code: 'log-damaged', at: log.error.index });
  const pinned = log.value.find((e) => e.kind === 'job-started');
  const checked = await checkDocument(pinned?.kind === 'job-started' ? pinned.text : '', card.procedure);
  if (!checked.ok) return fail({ code: 'procedure-broken', issues: checked.error });
  const writer = writerFor(host, id, texts, head);
  return openSession(host, card, checked.value, writer, log.value, [{ kind: 'session-opened' }]);
}

async function openSession(
  host: DeskHost,
  card: JobCard,
  procedure: Procedure,
  writer: LogWriter<EntryBody>,
  before: readonly Entry[],
  opening: readonly EntryBody[],
): Promise<Result<OpenJob, OpenFault>> {
  const now = (): Moment => ({ at: host.clock.wall(), mono: host.clock.mono(), session: host.session });
  const begun = writer.record(opening, { ...now(), who: card.who });
  const written = await begun.written;
  if (!written.ok) return fail({ code: 'store', fault: written.error });
  const entries = [...before, ...begun.entries];
  const job = fold(planOf(procedure), entries);
  const desk = new Desk({
    job,
    entries,
    recogniser: host.recogniser,
    voice: host.voice,
    clock: host.clock,
    session: host.session,
    who: card.who,
    record: (bodies, stamp) => writer.record(bodies, stamp),
    liveGrammar: host.tongue.liveGrammar,
    interpret: host.tongue.interpret,
    examples: (live) => taught(live, host.tongue.examples(live)),
    phrase: host.tongue.phrase,
    perform: host.perform,
    after: host.after,
  });
  const opened = before.length === 0 ? 'job-begins' : 'resumed';
  const greeting = [
    opened === 'job-begins'
      ? reply('job-begins', { title: text(procedure.title) })
      : reply('resumed', { machine: text(procedure.machine) }),
    ...(procedure.demonstration && before.length === 0 ? [reply('demonstration', {})] : []),
    ...announce(job, now()),
  ];
  return ok({ card, desk, writer, greeting });
}

const writerFor = (host: DeskHost, jobId: string, texts?: readonly string[], head?: Head) =>
  new LogWriter<EntryBody>({
    store: host.store,
    hash: host.hash,
    after: host.after,
    durability,
    jobId,
    ...(texts && head ? { texts, head } : {}),
  });
