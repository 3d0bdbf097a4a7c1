import { convert, type Measured } from '../fastening/quantity';
import type { Limit, Procedure, Step } from '../procedure/procedure';

/** The limit a measuring step names, if it names one. */
export const limitOf = (procedure: Procedure, step: Step): Limit | undefined =>
  step.kind === 'measure' && step.limit !== undefined ? procedure.limits.get(step.limit) : undefined;

/**
 * Whether a value keeps its step's limit, bounds included; null where no limit is named or it is of another kind. The
 * value is held against each bound in the unit the bound is printed in, by the exact factors of the units.
 */
export function limitVerdict(procedure: Procedure, step: Step, read: Measured): boolean | null {
  const limit = limitOf(procedure, step);
  if (!limit || (!limit.least && !limit.most)) return null;
  const { least, most } = limit;
  const over = least ? beyond(read, least) : 0;
  const under = most ? beyond(most, read) : 0;
  return over === null || under === null ? null : over >= 0 && under >= 0;
}

/** How far the first lies above the second, in the unit of the second; the dust of binary fractions is nothing. */
function beyond(first: Measured, second: Measured): number | null {
  const found = convert(first, second.unit);
  if (!found.ok) return null;
  const apart = found.value - second.value;
  return Math.abs(apart) <= Math.abs(second.value) * DUST ? 0 : apart;
}

const DUST = 1e-12;
