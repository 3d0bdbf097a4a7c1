import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { announce } from '../core/job/announce';
import { durability, type EntryBody } from '../core/job/entry';
import { fold } from '../core/job/evolve';
import { planOf } from '../core/job/plan';
import { reply, text } from '../core/phrasing/reply';
import type { Clock, Recogniser, Voice } from '../core/ports';
import { fail, ok, type Result } from '../core/result';
import type { Tongue } from '../core/tongue';
import { taught } from '../core/view/likeliest-words';
import { Desk } from '../machine/desk';
import { sha256Hex } from '../store/hash';
import { LogWriter } from '../store/log-writer';
import { memoryStore } from '../store/memory-store';
import { checkDocument } from './check-document';
import { issueLines } from './issue-lines';
import { readTongue } from './tongue-files';

export const nodeClock: Clock = { wall: () => Date.now(), mono: () => performance.now() };

/** The command line prints what would be said. */
const SPEECHLESS: Voice = {
  prepare: () => {},
  say: () => {},
  play: () => {},
  hush: () => {},
  hold: () => {},
  resume: () => {},
  on: () => () => {},
  close: () => {},
};

const later = (ms: number, run: () => void): (() => void) => {
  const timer = setTimeout(run, ms);
  timer.unref();
  return () => clearTimeout(timer);
};

/** The language that a document is written in, to be heard and spoken in it, or a line for each thing wrong with it. */
export function tongueFor(file: string): Result<Tongue, readonly string[]> {
  const source = readFileSync(file, 'utf8');
  const checked = checkDocument(source, file);
  return checked.ok ? ok(readTongue(checked.value.language)) : fail(issueLines(source, checked.error));
}

/** A job begun in memory on the real desk, with the ear that is given: for the commands that need no browser. */
export async function openWorkshop(
  file: string,
  tongue: Tongue,
  recogniser: Recogniser,
  clock: Clock = nodeClock,
): Promise<Result<Desk, readonly string[]>> {
  const source = readFileSync(file, 'utf8');
  const checked = checkDocument(source, file);
  if (!checked.ok) return fail(issueLines(source, checked.error));
  const procedure = checked.value;
  const store = memoryStore();
  const jobId = randomUUID();
  const created = clock.wall();
  const card = { id: jobId, title: procedure.title, procedure: procedure.id, created, who: 'rehearsal', closed: false };
  await store.createJob(card);
  const writer = new LogWriter<EntryBody>({
    store,
    hash: sha256Hex,
    after: later,
    durability,
    jobId,
  });
  const session = randomUUID();
  const now = () => ({ at: clock.wall(), mono: clock.mono(), session, who: 'rehearsal' });
  const begun = writer.record(
    [
      {
        kind: 'job-started',
        job: jobId,
        procedure: procedure.id,
        text: source,
        textHash: sha256Hex(source),
        machine: procedure.machine,
        people: [],
      },
      { kind: 'session-opened' },
    ],
    now(),
  );
  await begun.written;
  const job = fold(planOf(procedure), begun.entries);
  const desk = new Desk({
    job,
    entries: begun.entries,
    recogniser,
    voice: SPEECHLESS,
    clock,
    session,
    who: 'rehearsal',
    record: (bodies, stamp) => writer.record(bodies, stamp),
    liveGrammar: tongue.liveGrammar,
    interpret: tongue.interpret,
    examples: (job) => taught(tongue.teaching(job)),
    teach: (job) => taught(tongue.shown(job)),
    phrase: tongue.phrase,
    perform: () => {},
    after: later,
  });
  desk.start([
    reply('job-begins', { title: text(procedure.title) }),
    ...(procedure.demonstration ? [reply('demonstration', {})] : []),
    ...announce(job, now()),
  ]);
  return ok(desk);
}
