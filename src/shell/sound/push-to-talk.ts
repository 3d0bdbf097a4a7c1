import type { After } from '../../store/log-writer';
import type { SharedEar } from './shared-ear';

/** How long the ear stays open after the pedal is let go: the end of a sentence is known only by the silence after it. */
const GRACE_MS = 1500;

/** Listening only while a pedal or button is held, where the person has chosen that. */
export class PushToTalk {
  #isPedal = false;
  #cancel: (() => void) | null = null;

  constructor(
    private readonly ear: SharedEar,
    /** Whoever presses wants to talk: what was being said gives way. */
    private readonly hush: () => void,
    private readonly after: After,
    private readonly changed: () => void,
  ) {
    ear.on((event) => {
      // The sentence is understood: nothing more is waited for.
      if (this.#cancel && (event.type === 'heard' || event.type === 'rejected')) this.#shut();
    });
  }

  /** True where only the held pedal opens the ear. */
  choose(isPedal: boolean): void {
    if (isPedal === this.#isPedal) return;
    this.#isPedal = isPedal;
    this.#stopWaiting();
    if (isPedal) this.ear.shut('pedal');
    else this.ear.open('pedal');
  }

  pedal(isDown: boolean): void {
    if (!this.#isPedal) return;
    this.#stopWaiting();
    if (isDown) {
      this.hush();
      this.ear.open('pedal');
    } else this.#cancel = this.after(GRACE_MS, () => this.#shut());
    this.changed();
  }

  #shut(): void {
    this.#stopWaiting();
    this.ear.shut('pedal');
    this.changed();
  }

  #stopWaiting(): void {
    this.#cancel?.();
    this.#cancel = null;
  }
}
