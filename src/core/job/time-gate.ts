import type { Pass } from '../procedure/procedure';
import type { Job } from './job';
import { passStatesOf, workPlace } from './place';
import { stepIn } from './plan';
import { passState } from './tightening';

/** A tightening with angles is not left half done, so the time for it is asked before the first bolt. */
const asksForTime = (passes: readonly Pass[]): boolean => passes.some((p) => p.kind === 'angle');

/** At the beginning of a tightening, with no fastener of it touched. */
export function isBeforeBoltOne(job: Job): boolean {
  const place = workPlace(job);
  if (place.kind !== 'pass' || place.part === 'sort') return false;
  const [first] = stepIn(job.plan, place.step).passes;
  return place.pass === first?.id && passState(passStatesOf(job, place.step), place.pass).bolts.size === 0;
}

/** "Have you time?" has been asked and not answered: nothing of the tightening begins before that. */
export function isTimeAsked(job: Job): boolean {
  const place = workPlace(job);
  if (place.kind !== 'pass' || job.timeGiven.has(place.step) || !isBeforeBoltOne(job)) return false;
  const { step, passes } = stepIn(job.plan, place.step);
  return step.kind === 'tighten' && asksForTime(passes);
}
