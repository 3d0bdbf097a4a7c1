import { EMPTY } from '../core/log/chain';
import type { SealedText } from '../core/log/envelope';
import type { LogStore, StoreFault } from '../core/log/log-store';
import { fail, ok, type Result } from '../core/result';
import { Connection } from './connection';
import { appendFault, headAfter, sameHead } from './heads';
import { indexedBlobs } from './indexed-blobs';
import { ofJob, writing } from './log-tables';
import { type Room, room } from './room';

/** So many entries of a log taken over are written at once. */
const PORTION = 500;

type Logs = Pick<LogStore, 'jobs' | 'createJob' | 'saveCard' | 'saveStand' | 'append' | 'read' | 'adopt' | 'remove'>;

/** Opens the log store of this browser. Fails where there is none, or where a newer version of the program owns it. */
export async function openIndexedStore(name?: string, storage?: Room): Promise<Result<LogStore, StoreFault>> {
  const connection = new Connection(name);
  const opened = await connection.open();
  if (!opened.ok) return opened;
  return ok({
    lasting: true,
    ...indexedLogs(connection),
    ...indexedBlobs(connection),
    ...room(storage),
    close: () => connection.close(),
  });
}

type Texts = { readonly add: (text: string, key: [string, number]) => Promise<unknown> };

/**
 * `add`, never `put`: an entry is not written over. The function is async so that a request refused on the spot rejects
 * like any other; thrown in the middle of the list it would leave the earlier ones without anyone to hear them fail.
 */
const addAll = (texts: Texts, jobId: string, entries: readonly SealedText[]): Promise<unknown>[] =>
  entries.map(async ({ text, seq }) => texts.add(text, [jobId, seq]));

function indexedLogs(connection: Connection): Logs {
  return {
    jobs: () =>
      connection.with(async (database) => {
        const rows = await database.getAll('jobs');
        const listed = rows.map(({ card, head, stand = null }) => ({ card, head, stand }));
        return ok(listed.sort((a, b) => b.card.created - a.card.created));
      }),

    createJob: (card) =>
      connection.with((database) =>
        writing(database, ['jobs'], 'strict', async (transaction) => {
          const row = await transaction.objectStore('jobs').get(card.id);
          if (row) return fail({ code: 'conflict', jobId: card.id, expected: null, actual: row.head });
          await transaction.objectStore('jobs').add({ id: card.id, card, head: EMPTY });
          return ok(undefined);
        }),
      ),

    saveCard: (card) =>
      connection.with((database) =>
        writing(database, ['jobs'], 'strict', async (transaction) => {
          const row = await transaction.objectStore('jobs').get(card.id);
          if (!row) return fail({ code: 'no-such-job', jobId: card.id });
          await transaction.objectStore('jobs').put({ ...row, card });
          return ok(undefined);
        }),
      ),

    saveStand: (jobId, stand) =>
      connection.with((database) =>
        writing(database, ['jobs'], 'relaxed', async (transaction) => {
          const row = await transaction.objectStore('jobs').get(jobId);
          if (!row) return fail({ code: 'no-such-job', jobId });
          await transaction.objectStore('jobs').put({ ...row, stand });
          return ok(undefined);
        }),
      ),

    append: (jobId, expectedSeq, entries, durability) =>
      connection.with((database) =>
        writing(database, ['jobs', 'entries'], durability, async (transaction) => {
          const jobs = transaction.objectStore('jobs');
          const texts = transaction.objectStore('entries');
          const row = await jobs.get(jobId);
          const fault = appendFault(jobId, row?.head, expectedSeq, entries);
          if (fault || !row) return fail(fault ?? { code: 'no-such-job', jobId });
          await Promise.all([
            ...addAll(texts, jobId, entries),
            jobs.put({ ...row, head: headAfter(row.head, entries) }),
          ]);
          return ok(undefined);
        }),
      ),

    read: (jobId) =>
      connection.with(async (database) => {
        const transaction = database.transaction(['jobs', 'entries']);
        const [row, texts] = await Promise.all([
          transaction.objectStore('jobs').get(jobId),
          transaction.objectStore('entries').getAll(ofJob(jobId)),
          transaction.done,
        ]);
        return row ? ok({ card: row.card, head: row.head, texts }) : fail({ code: 'no-such-job', jobId });
      }),

    adopt: (card, entries, blobs, expected, tell = () => undefined) =>
      connection.with((database) =>
        writing(database, ['jobs', 'entries', 'blobs'], 'strict', async (transaction) => {
          const jobs = transaction.objectStore('jobs');
          const texts = transaction.objectStore('entries');
          const kept = transaction.objectStore('blobs');
          const row = await jobs.get(card.id);
          const actual = row?.head ?? null;
          if (!sameHead(actual, expected)) return fail({ code: 'conflict', jobId: card.id, expected, actual });
          const here = new Set((await kept.getAllKeys(ofJob(card.id))).map(([, id]) => id));
          const fresh = blobs.filter(({ id }) => !here.has(id));
          await texts.delete(ofJob(card.id));
          const total = entries.length + fresh.length;
          // In portions of one transaction: so many requests at once would keep the page from answering.
          for (let at = 0; at < entries.length; at += PORTION) {
            await Promise.all(addAll(texts, card.id, entries.slice(at, at + PORTION)));
            tell(Math.min(at + PORTION, entries.length) / total);
          }
          for (const [index, { id, mime, bytes }] of fresh.entries()) {
            await kept.add({ mime, bytes }, [card.id, id]);
            tell((entries.length + index + 1) / total);
          }
          await jobs.put({ id: card.id, card, head: headAfter(EMPTY, entries) });
          return ok(undefined);
        }),
      ),

    remove: (jobId) =>
      connection.with((database) =>
        writing(database, ['jobs', 'entries', 'blobs'], 'strict', async (transaction) => {
          await Promise.all([
            transaction.objectStore('jobs').delete(jobId),
            transaction.objectStore('entries').delete(ofJob(jobId)),
            transaction.objectStore('blobs').delete(ofJob(jobId)),
          ]);
          return ok(undefined);
        }),
      ),
  };
}
