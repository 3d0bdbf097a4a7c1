import type { Job } from './job';
import { passStatesOf, workPlace } from './place';
import { stepIn } from './plan';
import { passState } from './tightening';

/** A snapped bolt stops the whole job: the step, pass and bolt, until new bolt and slackening have settled it. */
export type Hold = { readonly step: string; readonly pass: string; readonly bolt: number };

export function holdOf(job: Job): Hold | undefined {
  const place = workPlace(job);
  if (place.kind !== 'pass') return undefined;
  // A tightening is not left with a bolt held, so the broken one is in the step being worked.
  for (const pass of stepIn(job.plan, place.step).passes)
    for (const [bolt, state] of passState(passStatesOf(job, place.step), pass.id).bolts)
      if (state.kind === 'held' && state.fault === 'snapped') return { step: place.step, pass: pass.id, bolt };
  return undefined;
}
