import { planOf } from '../../core/job/plan';
import type { LogStore, StoreFault } from '../../core/log/log-store';
import { ok, type Result } from '../../core/result';
import type { Run } from '../../store/hand-over';
import { type Breathing, inPieces } from '../in-pieces';
import { storeFaultWords } from '../job/fault-words';
import type { OpenJob } from '../job/job-desk';
import type { NoticeBoard } from '../notice-board';
import type { RecordWords } from './record-lists';
import type { RecordSource } from './record-room';

const WORK = 'exporting';

export type Save = (name: string, text: string | readonly string[], mime: string) => void;

/** The ways a job leaves this machine: as its whole log, which another machine can take over, or as a table. */
export class Exports {
  constructor(
    private readonly store: LogStore,
    private readonly save: Save,
    private readonly words: RecordWords,
    private readonly notices: NoticeBoard,
    private readonly breathing: Breathing,
  ) {}

  /** The open job goes out as it is in memory, whether or not it could be stored. Answers the name of the file. */
  async wholeLog(jobId: string, title: string, open: OpenJob | null): Promise<string | null> {
    const name = fileName(jobId, title, 'json');
    const tell = (share: number): void => this.notices.work(WORK, this.words.say('exporting', { file: name }), share);
    const text = await this.textOf(jobId, open, tell);
    this.notices.clear(WORK);
    if (!text.ok) {
      this.notices.trouble('export', storeFaultWords(text.error, this.words.say));
      return null;
    }
    this.notices.clear('export');
    this.save(name, text.value, 'application/json');
    return name;
  }

  /** A job's file. The open one is given as it is in memory. `tell` is given the share of a long one that is done. */
  async textOf(
    jobId: string,
    open: OpenJob | null,
    tell: (share: number) => void = () => undefined,
  ): Promise<Result<string, StoreFault>> {
    const run: Run = (work) => inPieces(work, this.breathing, tell);
    if (open?.card.id === jobId) return this.#fromMemory(open, run);
    const { exportJob } = await import('../../store/hand-over');
    return exportJob(this.store, jobId, true, run);
  }

  async table({ card, procedure, entries }: RecordSource): Promise<void> {
    const { fastenerCsv } = await import('./fastener-csv');
    // The mark at the front tells spreadsheets that the text is UTF-8.
    const csv = `\uFEFF${fastenerCsv(planOf(procedure), entries, this.words)}`;
    this.save(fileName(card.id, card.title, 'csv'), csv, 'text/csv;charset=utf-8');
  }

  async #fromMemory({ card, writer, desk, store }: OpenJob, run: Run) {
    const { printing } = await import('../../store/hand-over');
    await writer.flush();
    const blobs = await store.blobs(card.id);
    const isClosed = desk.job.status === 'closed';
    const job = { card: { ...card, closed: isClosed }, head: writer.head(), texts: writer.texts() };
    // Clips that cannot be read must not keep the log from leaving.
    return ok(await run(printing(job, blobs.ok ? blobs.value : [])));
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
