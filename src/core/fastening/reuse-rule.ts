import { assertNever } from '../result';
import type { Millimetres, NewtonMetres } from './quantity';
import { steady } from './steady';

/** When a used fastener may go back in. Makers differ widely, so a document carries its rule; none is built in. */
export type ReuseRule = { readonly name: string; readonly source: string } & (
  | { readonly kind: 'never' }
  /** A straightedge along the thread must touch every crest: a gap means it has necked. */
  | { readonly kind: 'straightedge' }
  /** The thread measured at two stations may differ by at most this, in mm. */
  | { readonly kind: 'thread-difference'; readonly most: Millimetres }
  /** The length under the head may be at most this, in mm. */
  | { readonly kind: 'length'; readonly most: Millimetres }
  /** The torque read during the last of the final turn must be above this, in N·m; equal is not enough. */
  | { readonly kind: 'final-torque'; readonly over: NewtonMetres }
);

/** What was found on one fastener. Only what its rule asks for is looked at. */
export type FastenerEvidence = {
  readonly straightedgeTouches?: boolean;
  readonly threadDiameters?: readonly [Millimetres, Millimetres];
  readonly length?: Millimetres;
  readonly finalTorque?: NewtonMetres;
};

export type ReuseVerdict =
  | { readonly kind: 'reuse' }
  | { readonly kind: 'replace' }
  /** The rule cannot be judged until this has been measured; until then the fastener stays out. */
  | { readonly kind: 'measure'; readonly what: keyof FastenerEvidence };

/** Judges one used fastener by the rule of its document. */
export function reuseVerdict(rule: ReuseRule, found: FastenerEvidence): ReuseVerdict {
  switch (rule.kind) {
    case 'never':
      return { kind: 'replace' };
    case 'straightedge':
      return judged('straightedgeTouches', found.straightedgeTouches, (touches) => touches);
    case 'thread-difference':
      return judged('threadDiameters', found.threadDiameters, ([a, b]) => steady(Math.abs(a - b)) <= rule.most);
    case 'length':
      return judged('length', found.length, (length) => length <= rule.most);
    case 'final-torque':
      return judged('finalTorque', found.finalTorque, (torque) => torque > rule.over);
    default:
      return assertNever(rule);
  }
}

function judged<T>(what: keyof FastenerEvidence, value: T | undefined, sound: (value: T) => boolean): ReuseVerdict {
  if (value === undefined) return { kind: 'measure', what };
  return { kind: sound(value) ? 'reuse' : 'replace' };
}
