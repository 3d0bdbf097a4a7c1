import { announce } from '../../core/job/announce';
import { chooseWrench } from '../../core/job/decide/wrench';
import { durability, type Entry, type EntryBody, type Moment } from '../../core/job/entry';
import { fold } from '../../core/job/evolve';
import type { Job } from '../../core/job/job';
import { ownedAnew, ownWrenches } from '../../core/job/own-wrenches';
import { planOf } from '../../core/job/plan';
import type { JobCard, LogStore } from '../../core/log/log-store';
import { type Reply, reply, text } from '../../core/phrasing/reply';
import type { Clock, Hash, Recogniser, Voice } from '../../core/ports';
import type { Procedure } from '../../core/procedure/procedure';
import { fail, ok, type Result } from '../../core/result';
import type { Tongue } from '../../core/tongue';
import { taught } from '../../core/view/likeliest-words';
import { Desk } from '../../machine/desk';
import type { DeskParts } from '../../machine/desk-parts';
import { LogWriter } from '../../store/log-writer';
import type { Settings } from '../../ui/setup/settings';
import { checkDocument, tellIssues } from '../library';
import type { OpenFault } from './job-log';
import { hasOtherText } from './pinned';

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
  /** Who works here, with what, and how much is said to them: from Setup. */
  readonly settings: () => Pick<Settings, 'people' | 'wrenches' | 'terse'>;
};

export type OpenJob = {
  readonly card: JobCard;
  readonly procedure: Procedure;
  readonly store: LogStore;
  readonly desk: Desk;
  readonly writer: LogWriter<EntryBody>;
  readonly greeting: readonly Reply[];
};

export type NewJob = { readonly text: string; readonly file: string; readonly machine: string; readonly who: string };

/** Begins a job: the document is checked and pinned in the first entry, which is durable before anything is said. */
export async function beginJob(host: DeskHost, start: NewJob): Promise<Result<OpenJob, OpenFault>> {
  const checked = await checkDocument(start.text, start.file);
  if (!checked.ok)
    return fail({ code: 'procedure-broken', issues: await tellIssues(checked.error, host.tongue.profile.code) });
  const procedure = checked.value;
  if (procedure.language !== host.tongue.profile.code) return otherLanguage(procedure);
  const id = host.newId();
  const { store, hash, after } = host;
  const card: JobCard = {
    id,
    title: procedure.title,
    procedure: procedure.id,
    created: host.clock.wall(),
    who: start.who,
    closed: false,
  };
  const made = await store.createJob(card);
  if (!made.ok) return fail({ code: 'store', fault: made.error });
  const first: EntryBody = {
    kind: 'job-started',
    job: id,
    procedure: procedure.id,
    text: start.text,
    textHash: hash(start.text),
    machine: start.machine,
    people: host.settings().people,
  };
  const writer = new LogWriter<EntryBody>({ store, hash, after, durability, jobId: id });
  const terse = host.settings().terse ? [{ kind: 'terse-set' as const, terse: true }] : [];
  return openSession(host, card, procedure, writer, [], [first, { kind: 'session-opened' }, ...terse], false);
}

/**
 * Takes a job up again from its log, on the document it was begun with. A damaged log is read only. `textNow` is what the
 * document with an id is by now, or null where there is none; where it is another, that is said.
 */
export async function resumeJob(
  host: DeskHost,
  id: string,
  textNow: (procedure: string) => string | null,
): Promise<Result<OpenJob, OpenFault>> {
  const { store, hash, after } = host;
  const { readJob } = await import('./job-log');
  const read = await readJob(store, hash, id, host.tongue.profile.code);
  if (!read.ok) return read;
  const { card, procedure, entries, texts, head, damage } = read.value;
  if (damage) return fail({ code: 'log-damaged', damage });
  if (procedure.language !== host.tongue.profile.code) return otherLanguage(procedure);
  const writer = new LogWriter<EntryBody>({ store, hash, after, durability, jobId: id, texts, head });
  const isOther = hasOtherText(entries, textNow(card.procedure));
  return openSession(host, card, procedure, writer, entries, [{ kind: 'session-opened' }], isOther);
}

const otherLanguage = ({ language }: Procedure) => fail({ code: 'other-language' as const, language });

/** The owner's wrenches, and those that stand for the tools of the document, as far as the job does not know them yet. */
const chosen = (job: Job, host: DeskHost): readonly EntryBody[] => [
  ...ownedAnew(job, host.settings().wrenches),
  ...ownWrenches(job, host.settings().wrenches).map((choice) => ({ kind: 'wrench-chosen' as const, ...choice })),
];

/** What changed in Setup while a job is open: told like an answer, because another setting may be due. */
export function takeWrenches(desk: Desk, host: DeskHost): void {
  const now = { at: host.clock.wall(), mono: host.clock.mono(), session: host.session };
  const owned = ownedAnew(desk.job, host.settings().wrenches);
  if (owned.length > 0) desk.report(owned, []);
  for (const { tool, wrench } of ownWrenches(desk.job, host.settings().wrenches)) {
    const { entries, replies } = chooseWrench(desk.job, tool, wrench, now);
    desk.report(entries, replies);
  }
}

async function openSession(
  host: DeskHost,
  card: JobCard,
  procedure: Procedure,
  writer: LogWriter<EntryBody>,
  before: readonly Entry[],
  opening: readonly EntryBody[],
  hasOther: boolean,
): Promise<Result<OpenJob, OpenFault>> {
  const now = (): Moment => ({ at: host.clock.wall(), mono: host.clock.mono(), session: host.session });
  const entries = [...before];
  const write = async (bodies: readonly EntryBody[]) => {
    const begun = writer.record(bodies, { ...now(), who: card.who });
    entries.push(...begun.entries);
    return begun.written;
  };
  const opened = await write(opening);
  if (!opened.ok) return fail({ code: 'store', fault: opened.error });
  const wrenches = chosen(fold(planOf(procedure), entries), host);
  const ready = wrenches.length > 0 ? await write(wrenches) : opened;
  if (!ready.ok) return fail({ code: 'store', fault: ready.error });
  const job = fold(planOf(procedure), entries);
  const { tongue, store } = host;
  const desk = new Desk({
    job,
    entries,
    recogniser: host.recogniser,
    voice: host.voice,
    clock: host.clock,
    session: host.session,
    who: card.who,
    record: (bodies, stamp) => writer.record(bodies, stamp),
    liveGrammar: tongue.liveGrammar,
    interpret: tongue.interpret,
    examples: (job) => taught(tongue.teaching(job)),
    teach: (job) => taught(tongue.shown(job)),
    phrase: tongue.phrase,
    perform: host.perform,
    after: host.after,
  });
  const isNew = before.length === 0;
  const greeting = [
    isNew
      ? reply('job-begins', { title: text(procedure.title) })
      : reply('resumed', { machine: text(procedure.machine) }),
    ...(hasOther ? [reply('document-changed', {})] : []),
    ...(procedure.demonstration && isNew ? [reply('demonstration', {})] : []),
    ...announce(job, now()),
  ];
  return ok({ card, procedure, store, desk, writer, greeting });
}
