import { fold } from '../../core/job/evolve';
import { planOf } from '../../core/job/plan';
import { isOf, type JobStand } from '../../core/log/job-stand';
import type { ListedJob, LogStore } from '../../core/log/log-store';
import type { Hash } from '../../core/ports';
import type { ProcedureCheck } from '../../core/procedure/check-procedure';
import { standOf } from '../../core/view/stand-of';
import type { After } from '../../store/log-writer';
import { checkDocument } from '../library';
import { readJob } from './job-log';

type Parts = {
  readonly store: Pick<LogStore, 'read' | 'saveStand'>;
  readonly hash: Hash;
  readonly language: string;
  readonly after: After;
  /** False in a tab that may only read: what it works out it keeps to itself. */
  readonly maySave: () => boolean;
};

/** Between one log and the next whoever taps gets an answer. */
const BREATH_MS = 30;

/**
 * Works out where jobs stand whose kept stand is missing or of another head: kept by an older program, taken over from a
 * file, or left without a last word when the browser was killed. One log after the other, each once.
 */
export class JobStands {
  readonly #known = new Map<string, { readonly hash: string; readonly stand: JobStand | null }>();
  #under = Promise.resolve();

  constructor(
    private readonly parts: Parts,
    private readonly changed: () => void,
  ) {}

  /** What is known of the job as it lies in the store; null until that is worked out, and of a log that is damaged. */
  of({ card, head, stand }: ListedJob): JobStand | null {
    if (isOf(stand, head)) return stand;
    const known = this.#known.get(card.id);
    return known?.hash === head.hash ? known.stand : null;
  }

  /** Resolves when all of these are worked out. */
  workOut(rows: readonly ListedJob[]): Promise<void> {
    this.#under = this.#under.then(async () => {
      const check = once(checkDocument);
      for (const row of rows) {
        const { card, head, stand } = row;
        if (head.seq === 0 || isOf(stand, head) || this.#known.get(card.id)?.hash === head.hash) continue;
        await new Promise<void>((resolve) => this.parts.after(BREATH_MS, resolve));
        await this.#workOut(card.id, check);
        this.changed();
      }
    });
    return this.#under;
  }

  async #workOut(id: string, check: typeof checkDocument): Promise<void> {
    const { store, hash, language, maySave } = this.parts;
    const read = await readJob(store, hash, id, language, check);
    // Gone since, unreadable or damaged: its row says no more than its card, and what is wrong is told when it is opened.
    if (!read.ok || read.value.damage) {
      if (read.ok) this.#known.set(id, { hash: read.value.head.hash, stand: null });
      return;
    }
    const { procedure, entries, head } = read.value;
    const stand = standOf(fold(planOf(procedure), entries), head);
    this.#known.set(id, { hash: head.hash, stand });
    // A fault here costs nothing but working it out again.
    if (maySave()) await store.saveStand(id, stand);
  }
}

/** Most jobs of a workshop are on a few documents, and checking one takes longer than folding a short log. */
function once(check: (text: string, file: string) => Promise<ProcedureCheck>): typeof check {
  const checked = new Map<string, Promise<ProcedureCheck>>();
  return (text, file) => {
    const known = checked.get(text) ?? check(text, file);
    checked.set(text, known);
    return known;
  };
}
