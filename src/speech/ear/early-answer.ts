import type { Sense } from './armed-grammar';
import type { PartialWords } from './recognition';
import type { Timing } from './tuning';

/**
 * Decides when an utterance may be ended before its pause is over: the same complete command for a while and quiet
 * after it. It ends the utterance only; what was said is judged by the final decode, with every veto.
 */
export class EarlyAnswer {
  readonly #timing: Timing;
  #words = '';
  #since = 0;

  constructor(timing: Timing) {
    this.#timing = timing;
  }

  /** `frame` counts from the start of the utterance. */
  mayAnswer(frame: number, silentFrames: number, { words, sense, extendable }: PartialWords): boolean {
    if (words !== this.#words) {
      this.#words = words;
      this.#since = frame;
    }
    const stable = frame - this.#since >= this.#timing.earlyStable && silentFrames >= this.#timing.earlyQuiet;
    return stable && isQuickCommand(sense) && !extendable;
  }
}

/** How long a pause ends the utterance, given the words so far. */
export function waitFrames({ sense, extendable }: PartialWords, hasReadings: boolean, timing: Timing): number {
  if (sense.kind === 'command' && !extendable) return timing.waitComplete;
  return hasReadings ? timing.waitNumber : timing.waitOpen;
}

/** Critical commands and readings are always heard out. */
function isQuickCommand(sense: Sense): boolean {
  return sense.kind === 'command' && sense.manner !== 'critical' && !sense.number;
}
