import type { Clock } from '../core/ports';

type GateEvent = { readonly type: 'sound-on' } | { readonly type: 'sound-off' };

/**
 * Tells when our own sound is in the air: from just before the first of any overlapping sounds until the last has left
 * the speaker. Also knows how long we have been sounding without a pause.
 */
export class SoundGate {
  readonly #clock: Pick<Clock, 'mono'>;
  readonly #tell: (event: GateEvent) => void;
  #sounds = 0;
  #open = false;
  #closing: ReturnType<typeof setTimeout> | undefined;
  #silentSince = Number.NEGATIVE_INFINITY;

  constructor(clock: Pick<Clock, 'mono'>, tell: (event: GateEvent) => void) {
    this.#clock = clock;
    this.#tell = tell;
  }

  get sounding(): boolean {
    return this.#open;
  }

  /** Milliseconds of silence so far; 0 while anything sounds. */
  silentMs(): number {
    return this.#open ? 0 : this.#clock.mono() - this.#silentSince;
  }

  began(): void {
    clearTimeout(this.#closing);
    this.#sounds++;
    if (this.#open) return;
    this.#open = true;
    this.#tell({ type: 'sound-on' });
  }

  /** `tailMs`: how long the sound still takes to reach the speaker. */
  ended(tailMs: number): void {
    this.#sounds--;
    if (this.#sounds > 0) return;
    this.#closing = setTimeout(() => {
      this.#open = false;
      this.#silentSince = this.#clock.mono();
      this.#tell({ type: 'sound-off' });
    }, tailMs);
  }

  close(): void {
    clearTimeout(this.#closing);
  }
}
