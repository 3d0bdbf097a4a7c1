import type { Sense } from './armed-grammar';
import type { Partial } from './recognition';
import { TIMING } from './thresholds';

/**
 * Decides when an utterance may be ended before its pause is over: the same complete command for a while and quiet
 * after it. It ends the utterance only; what was said is judged by the final decode, with every veto.
 */
export class EarlyAnswer {
  #words = '';
  #since = 0;

  /** `frame` counts from the start of the utterance. */
  mayAnswer(frame: number, silentFrames: number, { words, sense, extendable }: Partial): boolean {
    if (words !== this.#words) {
      this.#words = words;
      this.#since = frame;
    }
    return (
      isQuickCommand(sense) &&
      !extendable &&
      frame - this.#since >= TIMING.earlyStable &&
      silentFrames >= TIMING.earlyQuiet
    );
  }
}

/** How long a pause ends the utterance, given the words so far. */
export function waitFrames({ sense, extendable }: Partial, numbers: boolean): number {
  if (sense.kind === 'command' && !extendable) return TIMING.waitComplete;
  return numbers ? TIMING.waitNumber : TIMING.waitOpen;
}

/** Critical commands and readings are always heard out. */
function isQuickCommand(sense: Sense): boolean {
  return sense.kind === 'command' && sense.manner !== 'critical' && !sense.number;
}
