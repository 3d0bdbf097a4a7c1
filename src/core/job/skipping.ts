import type { Step } from '../procedure/procedure';
import type { Job } from './job';

/**
 * Only plain work may be put off, and only once. A hold point, a tightening or a wait may not; nor a step that passes a
 * milestone or starts a clock that others wait for.
 */
export const maySkip = (job: Job, step: Step): boolean =>
  (step.kind === 'do' || step.kind === 'remove' || step.kind === 'refit' || step.kind === 'fill') &&
  !step.question &&
  !step.milestone &&
  step.startsTimers.length === 0 &&
  job.steps.get(step.id) !== 'skipped';
