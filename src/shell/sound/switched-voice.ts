import { Listeners } from '../../core/listeners';
import type { Earcon, SpeechRequest, Voice, VoiceEvent } from '../../core/ports';

/** A voice whose engine can be changed while the app runs: the desk keeps speaking to the same one. */
export class SwitchedVoice implements Voice {
  readonly #listeners = new Listeners<VoiceEvent>();
  readonly on = this.#listeners.add;
  #real: Voice;
  #off: () => void;
  #isSounding = false;

  constructor(real: Voice) {
    this.#real = real;
    this.#off = real.on((event) => this.#tell(event));
  }

  /** What was being said is cut; nobody may wait for its end, so the end of the sound is told here. */
  swap(next: Voice): void {
    this.#real.hush();
    this.#off();
    this.#real.close();
    this.#real = next;
    this.#off = next.on((event) => this.#tell(event));
    if (this.#isSounding) this.#tell({ type: 'sound-off' });
  }

  prepare(texts: readonly string[]): void {
    this.#real.prepare(texts);
  }

  say(request: SpeechRequest): void {
    this.#real.say(request);
  }

  play(earcon: Earcon): void {
    this.#real.play(earcon);
  }

  hush(): void {
    this.#real.hush();
  }

  hold(): void {
    this.#real.hold();
  }

  resume(): void {
    this.#real.resume();
  }

  get isSounding(): boolean {
    return this.#isSounding;
  }

  close(): void {
    this.#off();
    this.#real.close();
    this.#listeners.clear();
  }

  #tell(event: VoiceEvent): void {
    if (event.type === 'sound-on' || event.type === 'sound-off') this.#isSounding = event.type === 'sound-on';
    this.#listeners.tell(event);
  }
}
