import type { UnitName } from '../fastening/quantity';
import type { Limit, Procedure, Step } from '../procedure/procedure';

/** The limit a measuring step names, if it names one. */
export const limitOf = (procedure: Procedure, step: Step): Limit | undefined =>
  step.kind === 'measure' && step.limit !== undefined ? procedure.limits.get(step.limit) : undefined;

/** Whether a value keeps its step's limit, bounds included; null where no limit is named or its unit is another one. */
export function limitVerdict(procedure: Procedure, step: Step, value: number, unit: UnitName): boolean | null {
  const limit = limitOf(procedure, step);
  if (!limit) return null;
  const bounds = [limit.least, limit.most].filter((b) => b !== undefined);
  if (bounds.length === 0 || bounds.some((b) => b.unit !== unit)) return null;
  return (
    (limit.least === undefined || value >= limit.least.value) && (limit.most === undefined || value <= limit.most.value)
  );
}
