import { EMPTY, type Head } from '../core/log/chain';
import type { JobStand } from '../core/log/job-stand';
import type { JobCard, LogStore, StoredBlob } from '../core/log/log-store';
import { fail, ok } from '../core/result';
import { appendFault, headAfter, sameHead } from './heads';

type KeptJob = {
  card: JobCard;
  head: Head;
  stand: JobStand | null;
  texts: string[];
  blobs: Map<string, StoredBlob>;
};

const done = ok(undefined);

/**
 * The same port without a disk: for the command line, for tests, and for a browser that offers no database. Nothing
 * outlives it, so a user must be told to hand the job over as a file.
 */
export function memoryStore(): LogStore {
  const jobs = new Map<string, KeptJob>();
  const settings = new Map<string, unknown>();
  const noJob = (jobId: string) => fail({ code: 'no-such-job', jobId } as const);

  return {
    lasting: false,

    jobs: async () =>
      ok(
        [...jobs.values()]
          .map(({ card, head, stand }) => ({ card, head, stand }))
          .sort((a, b) => b.card.created - a.card.created),
      ),

    createJob: async (card) => {
      const here = jobs.get(card.id);
      if (here) return fail({ code: 'conflict', jobId: card.id, expected: null, actual: here.head });
      jobs.set(card.id, { card, head: EMPTY, stand: null, texts: [], blobs: new Map() });
      return done;
    },

    saveCard: async (card) => {
      const job = jobs.get(card.id);
      if (!job) return noJob(card.id);
      job.card = card;
      return done;
    },

    saveStand: async (jobId, stand) => {
      const job = jobs.get(jobId);
      if (!job) return noJob(jobId);
      job.stand = stand;
      return done;
    },

    append: async (jobId, expectedSeq, entries) => {
      const job = jobs.get(jobId);
      const fault = appendFault(jobId, job?.head, expectedSeq, entries);
      if (fault || !job) return fault ? fail(fault) : noJob(jobId);
      for (const { text } of entries) job.texts.push(text);
      job.head = headAfter(job.head, entries);
      return done;
    },

    read: async (jobId) => {
      const job = jobs.get(jobId);
      return job ? ok({ card: job.card, head: job.head, texts: [...job.texts] }) : noJob(jobId);
    },

    adopt: async (card, entries, blobs, expected) => {
      const here = jobs.get(card.id);
      const actual = here?.head ?? null;
      if (!sameHead(actual, expected)) return fail({ code: 'conflict', jobId: card.id, expected, actual });
      const kept = new Map([...blobs.map((blob) => [blob.id, blob] as const), ...(here?.blobs ?? [])]);
      const texts = entries.map(({ text }) => text);
      jobs.set(card.id, { card, head: headAfter(EMPTY, entries), stand: null, texts, blobs: kept });
      return done;
    },

    remove: async (jobId) => {
      jobs.delete(jobId);
      return done;
    },

    putBlob: async (jobId, blob) => {
      const job = jobs.get(jobId);
      if (!job) return noJob(jobId);
      job.blobs.set(blob.id, blob);
      return done;
    },
    blob: async (jobId, id) => ok(jobs.get(jobId)?.blobs.get(id) ?? null),
    blobs: async (jobId) => ok([...(jobs.get(jobId)?.blobs.values() ?? [])]),
    blobSizes: async (jobId) =>
      ok(new Map([...(jobs.get(jobId)?.blobs.values() ?? [])].map(({ id, bytes }) => [id, bytes.length]))),
    deleteBlob: async (jobId, id) => {
      jobs.get(jobId)?.blobs.delete(id);
      return done;
    },

    setting: async (key) => ok(settings.get(key) ?? null),
    saveSetting: async (key, value) => {
      settings.set(key, structuredClone(value));
      return done;
    },

    estimate: async () => null,
    persist: async () => false,
    close: () => undefined,
  };
}
