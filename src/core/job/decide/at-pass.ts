import type { Pass, Step } from '../../procedure/procedure';
import type { Moment } from '../entry';
import type { Job } from '../job';
import { passStatesOf, workPlace } from '../place';
import { type PassPart, passIn, stepIn } from '../plan';
import { type BoltState, boltState, expectedBolt, type PassState, passState } from '../tightening';

export type AtPass = {
  readonly step: Step;
  readonly pass: Pass;
  readonly passes: readonly Pass[];
  readonly part: PassPart;
  readonly state: PassState;
};

/** The pass being worked, or undefined where the job is not at one. */
export function passAt(job: Job): AtPass | undefined {
  const place = workPlace(job);
  if (place.kind !== 'pass') return undefined;
  const { step, passes } = stepIn(job.plan, place.step);
  const pass = passIn(job.plan, place.step, place.pass);
  return { step, pass, passes, part: place.part, state: passState(passStatesOf(job, step.id), pass.id) };
}

export type AtBolt = AtPass & { readonly bolt: number; readonly is: BoltState };

/** The fastener that everything refers to while bolts are worked: the first of the order that is not done. */
export function boltAt(job: Job): AtBolt | undefined {
  const at = passAt(job);
  const bolt = at?.part === 'work' ? expectedBolt(at.pass, at.state) : undefined;
  return at && bolt !== undefined ? { ...at, bolt, is: boltState(at.state, bolt) } : undefined;
}

/** Step and pass of a place as entries name them. */
export const here = (at: AtPass) => ({ step: at.step.id, pass: at.pass.id });

const QUIET_MS = 3 * 60_000;

/** A bare report is only about the expected bolt while the work flows; after a quiet spell it is asked which one. */
export const isQuiet = (job: Job, now: Moment): boolean =>
  job.interrupted ||
  (job.lastWork !== null && (job.lastWork.session !== now.session || now.mono - job.lastWork.mono > QUIET_MS));
