import { type Entry, isTalk } from '../../core/job/entry';
import { reply } from '../../core/phrasing/reply';
import type { Result } from '../../core/result';
import { standOf } from '../../core/view/stand-of';
import { flushWhenHidden } from '../../store/flush-when-hidden';
import type { Say } from '../../ui/words/words';
import type { NoticeBoard } from '../notice-board';
import type { RecordSource } from '../record/record-room';
import { openFaultWords, storeFaultWords } from './fault-words';
import type { DeskHost, OpenJob } from './job-desk';
import type { OpenFault } from './job-log';

/** Long enough for the desk to have said by itself that a write failed. */
const DESK_FIRST_MS = 300;

/** The open job: its desk, its log's troubles, and what follows when it closes. */
export class Seat {
  #open: OpenJob | null = null;
  #offs: readonly (() => void)[] = [];

  constructor(
    private readonly host: () => DeskHost,
    private readonly notices: NoticeBoard,
    private readonly say: Say,
    private readonly changed: () => void,
    /** Before a job is left: whoever still has something on its way into it. */
    private readonly settle: () => Promise<void>,
  ) {}

  get open(): OpenJob | null {
    return this.#open;
  }

  /** The open job as its record shows it. */
  get source(): RecordSource | null {
    if (!this.#open) return null;
    const { card, procedure, desk } = this.#open;
    const { entries, job } = desk.snapshot;
    return { card: { ...card, closed: job.status === 'closed' }, procedure, entries };
  }

  get entries(): readonly Entry[] {
    return this.#open?.desk.snapshot.entries ?? [];
  }

  /** Sits down at a job that was opened, or tells why it could not be. */
  take(opened: Result<OpenJob, OpenFault>): boolean {
    if (!opened.ok) {
      // Its record is shown instead, and showing that a log is sound takes back what was said of the job.
      const about = opened.error.code === 'other-language' ? 'language' : 'job';
      this.notices.trouble(about, openFaultWords(opened.error, this.say));
      return false;
    }
    this.notices.clear('job');
    this.notices.clear('language');
    void this.#close();
    this.#sit(opened.value);
    return true;
  }

  /** Setup has changed: a wrench may have been entered or calibrated. */
  async wrenchesChanged(): Promise<void> {
    if (!this.#open) return;
    const { takeWrenches } = await import('./job-desk');
    if (this.#open) takeWrenches(this.#open.desk, this.host());
  }

  /** Leaves the job as it stands, with everything written. */
  async leave(): Promise<void> {
    if (this.#open) await this.settle();
    await this.#close();
  }

  async #close(): Promise<void> {
    const open = this.#getUp();
    if (!open) return;
    await open.writer.close();
    await keepStand(open);
  }

  /** The job that was open. */
  #getUp(): OpenJob | null {
    const open = this.#open;
    for (const off of this.#offs) off();
    this.#offs = [];
    open?.desk.close();
    if (open?.writer.fault() === null) this.notices.clear('not-saved');
    this.#open = null;
    return open;
  }

  #sit(open: OpenJob): void {
    this.#open = open;
    const { desk, writer, card, store, greeting } = open;
    let isClosed = card.closed;
    this.#offs = [
      desk.subscribe(() => {
        if (!isClosed && desk.job.status === 'closed') {
          isClosed = true;
          void store.saveCard({ ...card, closed: true });
        }
        this.changed();
      }),
      writer.on((event) => {
        if (event.type === 'fault') this.#notSaved(open, storeFaultWords(event.fault, this.say));
        if (event.type === 'recovered') this.#saved(open, event.seq);
      }),
      flushWhenHidden({ flush: () => writer.flush().then(() => keepStand(open)) }),
    ];
    desk.start(greeting);
  }

  #notSaved(open: OpenJob, why: string): void {
    this.notices.trouble('not-saved', `${this.say('not-saved')} ${why}`, [
      { label: this.say('save-copy'), event: { type: 'export', job: open.card.id, as: 'json' } },
    ]);
    // The desk says it by itself where a command failed; talk that could not be written is told from here.
    this.host().after(DESK_FIRST_MS, () => {
      if (this.#open === open && !open.desk.snapshot.notSaved) open.desk.tell([reply('not-saved', {})]);
    });
  }

  /** Entries that were refused are stored now after all: the desk takes the job from its log again, and says where it stands. */
  #saved({ desk }: OpenJob, seq: number): void {
    this.notices.clear('not-saved');
    this.notices.news('saved-again', this.say('saved-again'));
    desk.recovered(seq);
    this.changed();
  }
}

/** Where the job was left, for the list of jobs. Refused or lost it is worked out from the log the next time. */
async function keepStand({ desk, writer, store, card }: OpenJob): Promise<void> {
  const { job, entries } = desk.snapshot;
  // A write that ended as the job was left is in the log and not in the job any more.
  const isBehind = entries.filter((entry) => !isTalk(entry)).length !== job.entries.length;
  if (!isBehind) await store.saveStand(card.id, standOf(job, writer.head()));
}
