import type { Step } from '../procedure/procedure';

/** Timers that must be over before a step may be done, by id. */
export const waitsOf = (step: Step): readonly string[] => [
  ...step.needsTimers,
  ...(step.kind === 'wait' ? [step.timer] : []),
];
