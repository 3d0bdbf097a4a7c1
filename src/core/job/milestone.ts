import { MILESTONES, type Step } from '../procedure/procedure';
import type { Job, LooseEnd } from './job';

/** What is still open and blocks the milestone that this step passes, its own closings aside. */
export function blockersOf(job: Job, step: Step): readonly LooseEnd[] {
  if (!step.milestone) return [];
  const reached = MILESTONES.indexOf(step.milestone);
  return [...job.ends]
    .filter(([id, e]) => !step.closes.includes(id) && MILESTONES.indexOf(e.blocks) <= reached)
    .map(([, e]) => e);
}
