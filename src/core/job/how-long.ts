import type { Pass, Procedure } from '../procedure/procedure';
import { boltsLeft, type PassStates, passState } from './tightening';

/** One fastener with finding it and saying so, and one wrench set and read back. Common practice, from memory; in ms. */
const PER_BOLT_MS = 30_000;
const PER_PASS_MS = 60_000;
/** Nobody knows it nearer than this. */
const TO_MS = 5 * 60_000;

/** About how long the rest of a tightening takes, in ms, waits of the document included: up to the next five minutes. */
export function howLong({ timers }: Procedure, passes: readonly Pass[], states: PassStates): number {
  const total = passes.reduce((sum, pass) => {
    const state = passState(states, pass.id);
    if (pass.kind === 'wait') return sum + (state.waited ? 0 : (timers.get(pass.timer)?.minutes ?? 0) * 60_000);
    const left = boltsLeft(pass, state);
    return sum + left * PER_BOLT_MS + (left > 0 ? PER_PASS_MS : 0);
  }, 0);
  return Math.ceil(total / TO_MS) * TO_MS;
}
