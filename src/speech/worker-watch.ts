/** In milliseconds: how often the worker is asked, how long it may stay silent, and how long loading may take. */
export const WATCH = {
  every: 2_000,
  silence: 8_000,
  loading: 60_000,
  backoff: [1_000, 2_000, 4_000, 8_000, 16_000],
} as const;

/**
 * Whether a worker still answers. Pure bookkeeping of times, so that it can be tested without one: the adapter calls
 * `tick` on its timer and acts on what it says.
 */
export class WorkerWatch {
  #asked: number | null = null;
  #loadingSince: number | null;
  #restarts = 0;
  #ticked: number;
  #forgiven = false;

  constructor(now: number) {
    this.#loadingSince = now;
    this.#ticked = now;
  }

  /** `ask` is a time to ping; `silent` means the worker has been given up. */
  tick(now: number): 'ask' | 'wait' | 'silent' {
    this.#forgive(now);
    if (this.#loadingSince !== null) return now - this.#loadingSince > WATCH.loading ? 'silent' : 'wait';
    if (this.#asked === null) {
      this.#asked = now;
      return 'ask';
    }
    return now - this.#asked > WATCH.silence ? 'silent' : 'wait';
  }

  /** A page that was frozen did not listen either: its own silence counts against the worker only once it is asked again. */
  #forgive(now: number): void {
    const wasFrozen = now - this.#ticked > WATCH.silence;
    this.#ticked = now;
    if (!wasFrozen || this.#forgiven) return;
    this.#forgiven = true;
    this.#asked = null;
    if (this.#loadingSince !== null) this.#loadingSince = now;
  }

  loaded(): void {
    this.#loadingSince = null;
  }

  answered(): void {
    this.#asked = null;
    this.#forgiven = false;
  }

  /** How long to wait before starting another worker, or null when it has failed too often to go on. */
  restart(now: number): number | null {
    const wait = WATCH.backoff[this.#restarts];
    this.#restarts += 1;
    this.#asked = null;
    this.#loadingSince = now + (wait ?? 0);
    return wait ?? null;
  }

  /** It has heard something since: the next failure starts from a short wait again. */
  proven(): void {
    this.#restarts = 0;
  }
}
