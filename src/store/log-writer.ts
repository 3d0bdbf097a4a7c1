import { EMPTY, type Head, headOf, sealAfter } from '../core/log/chain';
import type { Body, Entry, Moment, SealedText } from '../core/log/envelope';
import type { Durability, LogStore, StoreFault } from '../core/log/log-store';
import type { Hash } from '../core/ports';
import { fail, ok, type Result } from '../core/result';
import { ownEntry } from './heads';

/** Runs something once after so many ms; the answer calls it off. */
export type After = (ms: number, run: () => void) => () => void;

export type WriterEvent =
  /** Everything up to `seq` is stored. */
  | { readonly type: 'written'; readonly seq: number }
  /** `waiting` entries are kept in memory only. */
  | { readonly type: 'fault'; readonly fault: StoreFault; readonly waiting: number }
  | { readonly type: 'recovered'; readonly seq: number };

export type Recorded<B extends Body> = {
  readonly entries: readonly Entry<B>[];
  /** The outcome of the first attempt to store them: only `ok` may be confirmed to the person. */
  readonly written: Promise<Result<void, StoreFault>>;
};

export type LogWriterOptions<B extends Body> = {
  readonly store: Pick<LogStore, 'append'>;
  readonly hash: Hash;
  readonly after: After;
  readonly durability: (body: B) => Durability;
  readonly jobId: string;
  /** What is stored already, as `read` gave it. */
  readonly texts?: readonly string[];
  readonly head?: Head;
};

type Outcome = { readonly upTo: number; readonly settle: (result: Result<void, StoreFault>) => void };

const RELAXED_AFTER_MS = 1000;
const RETRY_AFTER_MS = 5000;

/**
 * The one place where a job's entries get their order. Sealing is at once; storing follows in batches, one at a time,
 * first in first out. A relaxed entry waits for the next strict one, for a second at most, or for `flush`.
 *
 * Nothing is dropped: where storing fails, every entry stays in memory, `texts()` still gives the whole log for export,
 * and each new strict entry, a timer and `flush` try again from the first one missing. A conflict is final: another
 * writer has gone on from here, and only reading the job again can mend it.
 */
export class LogWriter<B extends Body> {
  readonly #options: LogWriterOptions<B>;
  readonly #texts: string[];
  readonly #listeners = new Set<(event: WriterEvent) => void>();
  /** The last entry sealed. */
  #tail: Head;
  /** The last entry known to be stored. */
  #stored: Head;
  #waiting: SealedText[] = [];
  #outcomes: Outcome[] = [];
  #fault: StoreFault | null = null;
  /** How the next batch must be stored; null while nothing presses. */
  #due: Durability | null = null;
  #busy = false;
  #closed = false;
  #cancelTimer: (() => void) | null = null;

  constructor(options: LogWriterOptions<B>) {
    this.#options = options;
    this.#texts = [...(options.texts ?? [])];
    this.#tail = this.#stored = options.head ?? EMPTY;
  }

  /** The whole log as it stands, stored or not. */
  texts(): readonly string[] {
    return this.#texts;
  }

  head(): Head {
    return this.#tail;
  }

  /** What keeps entries from being stored now, or null. */
  fault(): StoreFault | null {
    return this.#fault;
  }

  /** All of the bodies in their order, or none if one of them cannot be written. */
  record(bodies: readonly B[], moment: Moment): Recorded<B> {
    const entries = this.#seal(bodies, moment);
    const written = this.#outcome();
    if (bodies.some((body) => this.#options.durability(body) === 'strict')) void this.#pump('strict');
    else this.#pumpAfter(RELAXED_AFTER_MS);
    return { entries, written };
  }

  /** Stores all that waits, strictly: when the page is hidden, or again after a fault, when room has been made. */
  flush(): Promise<Result<void, StoreFault>> {
    const written = this.#outcome();
    void this.#pump('strict');
    return written;
  }

  on(listener: (event: WriterEvent) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Flushes for the last time and stops the timers. */
  close(): Promise<Result<void, StoreFault>> {
    this.#closed = true;
    this.#cancelTimer?.();
    this.#cancelTimer = null;
    return this.flush();
  }

  #seal(bodies: readonly B[], moment: Moment): readonly Entry<B>[] {
    const closed = sealAfter(this.#tail, bodies, moment, this.#options.hash);
    for (const { sealed } of closed) {
      this.#tail = headOf(sealed);
      this.#texts.push(sealed.text);
      this.#waiting.push(sealed);
    }
    return closed.map(({ entry }) => entry);
  }

  /** Settles when the next attempt that covers all sealed so far has ended. */
  #outcome(): Promise<Result<void, StoreFault>> {
    if (this.#waiting.length === 0) return Promise.resolve(ok(undefined));
    return new Promise((settle) => this.#outcomes.push({ upTo: this.#tail.seq, settle }));
  }

  #pumpAfter(ms: number): void {
    if (this.#busy || this.#closed || this.#cancelTimer) return;
    this.#cancelTimer = this.#options.after(ms, () => {
      this.#cancelTimer = null;
      void this.#pump('relaxed');
    });
  }

  async #pump(durability: Durability): Promise<void> {
    if (this.#due !== 'strict') this.#due = durability;
    if (this.#busy) return;
    this.#busy = true;
    this.#cancelTimer?.();
    this.#cancelTimer = null;
    while (this.#due) {
      const how = this.#due;
      this.#due = null;
      if (this.#waiting.length > 0) await this.#attempt(this.#fault ? 'strict' : how);
    }
    this.#busy = false;
    if (this.#waiting.length > 0 && this.#fault?.code !== 'conflict') {
      this.#pumpAfter(this.#fault ? RETRY_AFTER_MS : RELAXED_AFTER_MS);
    }
  }

  async #attempt(durability: Durability): Promise<void> {
    const batch = [...this.#waiting];
    const upTo = batch.at(-1)?.seq ?? 0;
    const final = this.#fault?.code === 'conflict' ? this.#fault : null;
    const { store, jobId } = this.#options;
    const result = final ? fail(final) : await store.append(jobId, this.#stored.seq, batch, durability);
    const reached = result.ok ? batch.at(-1) : ownEntry(result.error, batch);
    if (reached) this.#advance(reached);
    if (!result.ok && reached && reached.seq < upTo) this.#due = 'strict';
    else this.#settle(upTo, reached ? ok(undefined) : result);
    if (!result.ok && !reached) this.#fail(result.error);
  }

  #advance(reached: SealedText): void {
    const { seq } = reached;
    this.#stored = headOf(reached);
    this.#waiting = this.#waiting.filter((entry) => entry.seq > seq);
    const recovered = this.#fault !== null;
    this.#fault = null;
    this.#emit({ type: 'written', seq });
    if (recovered) this.#emit({ type: 'recovered', seq });
  }

  #fail(fault: StoreFault): void {
    const news = this.#fault?.code !== fault.code;
    this.#fault = fault;
    if (news) this.#emit({ type: 'fault', fault, waiting: this.#waiting.length });
  }

  #settle(upTo: number, result: Result<void, StoreFault>): void {
    const covered = this.#outcomes.filter((outcome) => outcome.upTo <= upTo);
    this.#outcomes = this.#outcomes.filter((outcome) => outcome.upTo > upTo);
    for (const { settle } of covered) settle(result);
  }

  #emit(event: WriterEvent): void {
    // Apart from storing: a listener that throws must not stop the log.
    for (const listener of this.#listeners) queueMicrotask(() => listener(event));
  }
}
