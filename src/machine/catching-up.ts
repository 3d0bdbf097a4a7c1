import { durability, type Entry } from '../core/job/entry';

/**
 * Which entries the running job has not folded: those whose write is under way, and those whose write failed. The log
 * keeps the latter and stores them later, in their place; from then on the job must be folded again from the log.
 */
export class CatchingUp {
  private readonly underWay = new Set<number>();
  private missed: readonly number[] = [];

  /** A write has begun. */
  begun(entries: readonly Entry[]): void {
    for (const { seq } of entries) this.underWay.add(seq);
  }

  /** It has ended, and what it was to write is there or not. */
  ended(entries: readonly Entry[], isWritten: boolean): void {
    for (const { seq } of entries) this.underWay.delete(seq);
    if (!isWritten) this.missed = [...this.missed, ...entries.map(({ seq }) => seq)];
  }

  /** Whether something that was refused is stored now, everything up to `seq` being so. */
  isBehind(seq: number): boolean {
    return this.missed.some((one) => one <= seq);
  }

  /**
   * What the job is the fold of once everything up to `seq` is stored: all of that, and of what comes after it the
   * questions, which wait for no disk. Nothing of it is missed any more.
   */
  storedUpTo(seq: number, log: readonly Entry[]): readonly Entry[] {
    this.missed = this.missed.filter((one) => one > seq);
    return log.filter((e) => !this.underWay.has(e.seq) && (e.seq <= seq || durability(e) === 'relaxed'));
  }
}
