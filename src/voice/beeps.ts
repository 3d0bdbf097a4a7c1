import type { Earcon } from '../core/ports';
import type { Mouth, Stop, VoiceFailure } from './mouth';
import type { SoundGate } from './sound-gate';

/** The earcons now sounding. They play over whatever is being said and never wait. */
export class Beeps {
  readonly #mouth: Mouth;
  readonly #gate: SoundGate;
  readonly #stops = new Set<Stop>();

  constructor(mouth: Mouth, gate: SoundGate) {
    this.#mouth = mouth;
    this.#gate = gate;
  }

  play(earcon: Earcon, failed: (failure: VoiceFailure) => void): void {
    this.#gate.began();
    const stop = this.#mouth.beep(earcon, (outcome) => {
      this.#over(stop);
      if (!outcome.ok) failed(outcome.error);
    });
    this.#stops.add(stop);
  }

  hush(): void {
    for (const stop of [...this.#stops]) {
      stop();
      this.#over(stop);
    }
  }

  #over(stop: Stop): void {
    if (this.#stops.delete(stop)) this.#gate.ended(this.#mouth.tailMs());
  }
}
