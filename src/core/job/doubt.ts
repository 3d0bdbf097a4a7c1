import type { Job } from './job';
import { passStatesOf, workPlace } from './place';
import { passIn } from './plan';
import { type BoltState, boltState, expectedBolt, passState } from './tightening';

type AtBolt = { readonly step: string; readonly pass: string; readonly bolt: number };

/**
 * The fastener that an interruption leaves in doubt: the one at the cursor of an angle pass, where nobody can tell
 * afterwards whether the wrench has turned it. One that is held or in doubt already stays what it is.
 */
export function boltInDoubt(job: Job): AtBolt | undefined {
  const place = workPlace(job);
  if (place.kind !== 'pass' || place.part !== 'work') return undefined;
  const pass = passIn(job.plan, place.step, place.pass);
  if (pass.kind !== 'angle') return undefined;
  const state = passState(passStatesOf(job, place.step), pass.id);
  const bolt = expectedBolt(pass, state);
  if (bolt === undefined) return undefined;
  const { kind } = boltState(state, bolt);
  return kind === 'open' || kind === 'partial' ? { step: place.step, pass: pass.id, bolt } : undefined;
}

/** A bolt put in doubt keeps what was reported of its angle, to be compared with its mark. */
export const doubted = (before: BoltState, why: (BoltState & { readonly kind: 'unknown' })['why']): BoltState => ({
  kind: 'unknown',
  why,
  had: before.kind === 'partial' ? before.degrees : before.kind === 'unknown' ? before.had : 0,
});
