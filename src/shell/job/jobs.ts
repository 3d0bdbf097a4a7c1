import { command, type RuleName } from '../../core/job/command';
import { commandAtCursor } from '../../core/job/cursor-command';
import type { Job } from '../../core/job/job';
import type { ListedJob } from '../../core/log/log-store';
import { reply } from '../../core/phrasing/reply';
import { standOf } from '../../core/view/stand-of';
import type { JobLine } from '../../ui/jobs/job-list';
import type { Say } from '../../ui/words/words';
import { buttonLabel } from '../button-label';
import type { Library } from '../library';
import type { NoticeBoard } from '../notice-board';
import type { RecordSource } from '../record/record-room';
import type { ShellParts } from '../shell-parts';
import { damageWords, openFaultWords, storeFaultWords } from './fault-words';
import type { DeskHost } from './job-desk';
import { hasOtherText } from './pinned';
import type { Seat } from './seat';
import type { JobStands } from './stands';
import type { Writing } from './writing';

type JobsHost = {
  readonly parts: ShellParts;
  readonly host: () => DeskHost;
  readonly seat: Seat;
  readonly library: Library;
  readonly writing: Writing;
  readonly notices: NoticeBoard;
  readonly say: Say;
  readonly changed: () => void;
};

/** The jobs of this machine: begun, taken up, rehearsed, read and deleted. Each answers whether it came off. */
export class Jobs {
  #rows: readonly ListedJob[] = [];
  #stands: JobStands | null = null;

  constructor(private readonly at: JobsHost) {}

  /** Every job with where it stands, newest first: the open one as it is now, the others as their logs were left. */
  get lines(): readonly JobLine[] {
    const { open } = this.at.seat;
    const lines = this.#rows.map((row) => {
      const isOpen = open?.card.id === row.card.id;
      const head = isOpen ? open.writer.head() : row.head;
      const stand = isOpen ? standOf(open.desk.job, head) : (this.#stands?.of(row) ?? null);
      // The card may lag behind the log where the browser was killed in between.
      const closed = row.card.closed || stand?.at.kind === 'closed';
      return { card: { ...row.card, closed }, entries: head.seq, isOpen, stand };
    });
    // Numbered as they are shown, those that can be worked on before those that are finished.
    const order = [...lines.filter(({ card }) => !card.closed), ...lines.filter(({ card }) => card.closed)];
    return lines.map((line) => ({ ...line, number: order.indexOf(line) + 1 }));
  }

  /** The job worked on last; null where none is left to work on. */
  get last(): JobLine | null {
    const left = this.lines.filter(({ card }) => !card.closed);
    const worked = ({ card, stand }: JobLine): number => stand?.worked ?? card.created;
    return left.toSorted((a, b) => worked(b) - worked(a))[0] ?? null;
  }

  async look(): Promise<void> {
    const rows = await this.at.parts.store.jobs();
    if (rows.ok) this.#rows = rows.value;
    const open = this.at.seat.open?.card.id;
    void this.#standing().then((stands) => stands.workOut(this.#rows.filter(({ card }) => card.id !== open)));
  }

  async #standing(): Promise<JobStands> {
    const { JobStands } = await import('./stands');
    const { store, hash, tongue, after, lock } = this.at.parts;
    const maySave = () => lock.pen() === 'writing' || lock.pen() === 'unguarded';
    this.#stands ??= new JobStands({ store, hash, after, maySave, language: tongue.profile.code }, this.at.changed);
    return this.#stands;
  }

  async begin(procedure: string, machine: string, who: string): Promise<boolean> {
    if (!this.at.writing.isAllowed()) return false;
    return this.#begin(this.at.host(), procedure, machine, who);
  }

  /** The same on a store that is forgotten: to learn the words and the order before the engine is open. */
  async rehearse(procedure: string, who = this.at.say('procedure-rehearse')): Promise<boolean> {
    const host = { ...this.at.host(), store: await this.at.parts.scratchStore() };
    const isBegun = await this.#begin(host, procedure, this.at.library.find(procedure)?.procedure?.machine ?? '', who);
    if (isBegun) this.at.notices.news('rehearsal', this.at.say('rehearsing'));
    return isBegun;
  }

  async #begin(host: DeskHost, procedure: string, machine: string, who: string): Promise<boolean> {
    const found = this.at.library.find(procedure);
    if (!found) return false;
    await this.at.seat.leave();
    const { text, file } = found;
    const { beginJob } = await import('./job-desk');
    return this.at.seat.take(await beginJob(host, { text, file, machine, who }));
  }

  /** Takes a job up again. The one that is open already is simply gone back to. */
  async resume(id: string): Promise<boolean> {
    if (this.at.seat.open?.card.id === id) return true;
    if (!this.at.writing.isAllowed()) return false;
    await this.at.seat.leave();
    const { resumeJob } = await import('./job-desk');
    const opened = await resumeJob(this.at.host(), id, (procedure) => this.#textNow(procedure));
    if (!this.at.seat.take(opened)) return false;
    if (this.#hasOtherText()) this.#showOtherText();
    return true;
  }

  /** A document was brought in: where the open job is worked on another text of it, that is said and shown. */
  documentBrought(): void {
    if (!this.#hasOtherText()) return;
    this.at.seat.open?.desk.tell([OTHER_TEXT]);
    this.#showOtherText();
  }

  #hasOtherText(): boolean {
    const { open, entries } = this.at.seat;
    return open !== null && hasOtherText(entries, this.#textNow(open.card.procedure));
  }

  #textNow(procedure: string): string | null {
    return this.at.library.find(procedure)?.text ?? null;
  }

  #showOtherText(): void {
    this.at.notices.news('document-changed', this.at.parts.tongue.phrase([OTHER_TEXT]).shown);
  }

  /** A button of the list: the job is taken up, and the command goes the same way as a spoken one. */
  async command(id: string, rule: 'close-job' | 'hand-over' | 'tell-brief'): Promise<boolean> {
    if (!(await this.resume(id))) return false;
    const desk = this.at.seat.open?.desk;
    // What only asks leaves a break as it is.
    if (desk?.job.paused && rule !== 'tell-brief') {
      this.press('im-back');
      await desk.idle();
    }
    this.press(rule);
    return true;
  }

  /** A command from a button or a key. Whatever was still being said is about what was before it. */
  press(rule: RuleName): void {
    const desk = this.at.seat.open?.desk;
    if (!desk) return;
    const c = commandAtCursor(desk.job, rule) ?? command('tell-place');
    if (rule !== 'stop') this.at.host().voice.hush();
    desk.press(c, this.#labelOf(rule, desk.job));
  }

  /** What was pressed, as it stands on the screen: the log keeps it as what was heard. */
  #labelOf(rule: RuleName, job: Job): string {
    const { words, tongue } = this.at.parts;
    return buttonLabel(rule, words) ?? tongue.shown(job).get(rule) ?? rule;
  }

  /** Another of the wrenches that fit, by its id: the same road as by its name. */
  use(id: string): void {
    this.at.host().voice.hush();
    this.at.seat.open?.desk.press(
      command('use-wrench', { wrench: { kind: 'option', id } }),
      this.at.say('wrenches-other'),
    );
  }

  /** A job to read only: closed, damaged, or not to be touched. */
  async read(id: string): Promise<RecordSource | null> {
    const { parts, notices, say } = this.at;
    const { readJob } = await import('./job-log');
    const read = await readJob(parts.store, parts.hash, id, parts.tongue.profile.code);
    if (!read.ok) {
      notices.trouble('job', openFaultWords(read.error, say), [exportAct(id, say)]);
      return null;
    }
    const { damage } = read.value;
    if (damage) notices.trouble('job', damageWords(damage, say), [exportAct(id, say)]);
    else notices.clear('job');
    return read.value;
  }

  async remove(id: string): Promise<void> {
    const { parts, seat, notices, say, writing } = this.at;
    if (!writing.isAllowed()) return;
    if (seat.open?.card.id === id) await seat.leave();
    const removed = await parts.store.remove(id);
    if (removed.ok) notices.clear('job');
    else notices.trouble('job', storeFaultWords(removed.error, say));
    await this.look();
  }

  async removeAll(): Promise<boolean> {
    if (!this.at.writing.isAllowed()) return false;
    await this.look();
    for (const { card } of this.#rows) await this.remove(card.id);
    return this.#rows.length === 0;
  }
}

const OTHER_TEXT = reply('document-changed', {});

const exportAct = (job: string, say: Say) => ({
  label: say('save-copy'),
  event: { type: 'export' as const, job, as: 'json' as const },
});
