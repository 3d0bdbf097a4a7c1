import type { Moment } from '../core/job/entry';

/** The two clocks of a machine drift apart by less than this between two replies. */
const MOST_DRIFT_MS = 60_000;

/** Notices that the clock was set under a job, or that the machine slept while the other clock stood still. */
export class ClockWatch {
  private last: Moment;

  constructor(began: Moment) {
    this.last = began;
  }

  /** Whether the clocks have parted since it was last asked: told once for each time they do. */
  hasMoved(now: Moment): boolean {
    const apart = now.at - this.last.at - (now.mono - this.last.mono);
    this.last = now;
    return Math.abs(apart) > MOST_DRIFT_MS;
  }
}
