import { passAt } from '../job/decide/bolt';
import type { Job } from '../job/job';
import { workPlace } from '../job/place';
import { stepIn } from '../job/plan';
import { expectedBolt } from '../job/tightening';
import { count, type Reply, reply } from '../phrasing/reply';

/** Where a job stands, as short as it can be told on the other screens: "Pass 1 of 4, bolt 5". None where its steps are done. */
export function placeLine(job: Job): readonly Reply[] {
  const at = passAt(job);
  if (at) {
    const bolt = expectedBolt(at.pass, at.state);
    const place = { number: count(at.passes.indexOf(at.pass) + 1), total: count(at.passes.length) };
    return bolt === undefined
      ? [reply('shown-pass-only', place)]
      : [reply('shown-pass-bolt', { ...place, bolt: count(bolt) })];
  }
  const work = workPlace(job);
  if (work.kind !== 'step') return [];
  const { phase, step } = stepIn(job.plan, work.step);
  return [reply('shown-step', { number: count(phase.steps.indexOf(step) + 1), total: count(phase.steps.length) })];
}
