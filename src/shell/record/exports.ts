import { planOf } from '../../core/job/plan';
import type { LogStore, StoreFault } from '../../core/log/log-store';
import { ok, type Result } from '../../core/result';
import { storeFaultWords } from '../job/fault-words';
import type { OpenJob } from '../job/job-desk';
import type { NoticeBoard } from '../notice-board';
import type { RecordWords } from './record-lists';
import type { RecordSource } from './record-room';

export type Save = (name: string, text: string | readonly string[], mime: string) => void;

/** The ways a job leaves this machine: as its whole log, which another machine can take over, or as a table. */
export class Exports {
  constructor(
    private readonly store: LogStore,
    private readonly save: Save,
    private readonly words: RecordWords,
    private readonly notices: NoticeBoard,
  ) {}

  /** The open job goes out as it is in memory, whether or not it could be stored. Answers the name of the file. */
  async wholeLog(jobId: string, title: string, open: OpenJob | null): Promise<string | null> {
    const text = await this.textOf(jobId, open);
    if (!text.ok) {
      this.notices.trouble('export', storeFaultWords(text.error, this.words.say));
      return null;
    }
    this.notices.clear('export');
    const name = fileName(jobId, title, 'json');
    this.save(name, text.value, 'application/json');
    return name;
  }

  /** A job's file. The open one is given as it is in memory. */
  async textOf(jobId: string, open: OpenJob | null): Promise<Result<string, StoreFault>> {
    if (open?.card.id === jobId) return this.#fromMemory(open);
    const { exportJob } = await import('../../store/hand-over');
    return exportJob(this.store, jobId, true);
  }

  async table({ card, procedure, entries }: RecordSource): Promise<void> {
    const { fastenerCsv } = await import('./fastener-csv');
    // The mark at the front tells spreadsheets that the text is UTF-8.
    const csv = `\uFEFF${fastenerCsv(planOf(procedure), entries, this.words)}`;
    this.save(fileName(card.id, card.title, 'csv'), csv, 'text/csv;charset=utf-8');
  }

  async #fromMemory({ card, writer, desk, store }: OpenJob) {
    const { jobFileText } = await import('../../store/hand-over');
    await writer.flush();
    const blobs = await store.blobs(card.id);
    const isClosed = desk.job.status === 'closed';
    const job = { card: { ...card, closed: isClosed }, head: writer.head(), texts: writer.texts() };
    // Clips that cannot be read must not keep the log from leaving.
    return ok(jobFileText(job, blobs.ok ? blobs.value : []));
  }
}

const fileName = (jobId: string, title: string, ending: string): string => {
  const stem = title
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-+|-+$/g, '')
    .slice(0, 40);
  return [...(stem === '' ? [] : [stem]), `${jobId.slice(0, 8)}.${ending}`].join('-');
};
