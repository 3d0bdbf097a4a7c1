import type { Decision } from '../core/job/decision';
import { durability, type Entry, type EntryBody, type Moment } from '../core/job/entry';
import { fold } from '../core/job/evolve';
import type { Plan } from '../core/job/plan';
import { CatchingUp } from './catching-up';
import type { DeskParts } from './desk-parts';
import type { RepairEvent } from './machine';

/** What the log asks of the desk it belongs to. */
export type LogHost = {
  readonly plan: Plan;
  readonly now: () => Moment;
  readonly send: (event: RepairEvent) => void;
  /** What had been refused counts after all: it is said where the job stands. */
  readonly standAnew: () => void;
};

/** The desk's way to the log: what is written, what is under way, and what was refused and is stored later. */
export class DeskLog {
  entries: readonly Entry[];
  notSaved = false;
  private readonly catching = new CatchingUp();
  private inFlight: Promise<unknown> = Promise.resolve();

  constructor(
    private readonly parts: Pick<DeskParts, 'record' | 'entries' | 'who'>,
    private readonly host: LogHost,
  ) {
    this.entries = parts.entries;
  }

  /** Everything written and answered that was under way. */
  async idle(): Promise<void> {
    for (let seen: Promise<unknown> | null = null; seen !== this.inFlight; ) {
      seen = this.inFlight;
      await seen;
    }
  }

  /** Writes what was decided; the machine hears of it once it is durable, or that it could not be. */
  write(decision: Decision): void {
    const { entries, written } = this.record(decision.entries);
    const answer = (isWritten: boolean): void => {
      this.catching.ended(entries, isWritten);
      // The log stores in order: with these written, what was refused before them is there too, and counts before them.
      const isBehind = isWritten && this.foldAnew((entries[0]?.seq ?? 1) - 1);
      this.host.send(isWritten ? { type: 'log.written', entries, decision } : { type: 'log.failed' });
      if (isBehind) this.host.standAnew();
    };
    this.catching.begun(entries);
    // A question that may be asked again promises nothing, so it does not wait for the disk.
    if (decision.entries.every((body) => durability(body) === 'relaxed')) answer(true);
    else this.inFlight = Promise.all([this.inFlight, written.then((outcome) => answer(outcome.ok))]);
  }

  note(body: EntryBody): void {
    this.record([body]);
  }

  /** Everything up to this entry is stored now, after some of it was not. */
  recovered(seq: number): void {
    if (this.foldAnew(seq)) this.host.standAnew();
  }

  private record(bodies: readonly EntryBody[]) {
    const recorded = this.parts.record(bodies, { ...this.host.now(), who: this.parts.who });
    this.entries = [...this.entries, ...recorded.entries];
    return recorded;
  }

  /** Takes the job from the log again where it is behind it; false where it is not. */
  private foldAnew(seq: number): boolean {
    if (!this.catching.isBehind(seq)) return false;
    this.notSaved = false;
    this.host.send({
      type: 'log.caught-up',
      job: fold(this.host.plan, this.catching.storedUpTo(seq, this.entries)),
    });
    return true;
  }
}
