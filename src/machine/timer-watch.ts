import type { Moment } from '../core/job/entry';
import type { Job } from '../core/job/job';
import { timeLeft } from '../core/job/timer';

/** Says when a wait is over. The wait itself is in the log; this only wakes up to look. */
export class TimerWatch {
  private cancel: () => void = () => {};
  private readonly told = new Set<string>();

  constructor(
    private readonly after: (ms: number, run: () => void) => () => void,
    private readonly now: () => Moment,
    private readonly over: (say: string) => void,
  ) {}

  /** Looks at the job's timers again: those already over are not announced, the next to end is waited for. */
  watch(job: Job): void {
    this.cancel();
    const now = this.now();
    const running = [...job.timers].map(([id, timer]) => ({ id, timer, left: timeLeft(timer, now) }));
    for (const { id, left } of running) if (left === 0) this.told.add(id);
    const next = running.filter((t) => t.left > 0).sort((a, b) => a.left - b.left)[0];
    if (!next) return;
    // Long waits are slept through in pieces: a sleeping machine makes one long timeout unreliable.
    this.cancel = this.after(Math.min(next.left, 30_000), () => {
      if (timeLeft(next.timer, this.now()) === 0 && !this.told.has(next.id)) {
        this.told.add(next.id);
        this.over(next.timer.say);
      }
      this.watch(job);
    });
  }

  close(): void {
    this.cancel();
  }
}
