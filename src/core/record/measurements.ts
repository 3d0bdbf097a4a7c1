import type { UnitName } from '../fastening/quantity';
import { readingSay } from '../job/describe';
import type { Entry } from '../job/entry';
import { type Plan, stepIn } from '../job/plan';
import type { Limit } from '../procedure/procedure';

/** A reading somebody read out, and the limit it was held against, with whose limit that is. */
export type MeasurementRecord = {
  readonly seq: number;
  readonly at: number;
  readonly who: string;
  readonly step: string;
  readonly say: string;
  readonly value: number;
  readonly unit: UnitName;
  readonly limit: Limit | null;
  /** Null where the document names no limit. */
  readonly within: boolean | null;
};

/** Every reading among the entries that stand, a repeated one each time it was taken. */
export const measurementsOf = (plan: Plan, live: readonly Entry[]): readonly MeasurementRecord[] =>
  live.flatMap((e) => {
    if (e.kind !== 'measured') return [];
    const { step } = stepIn(plan, e.step);
    const limit = step.kind === 'measure' && step.limit ? plan.procedure.limits.get(step.limit) : undefined;
    return [
      {
        seq: e.seq,
        at: e.at,
        who: e.who,
        step: step.say,
        say: readingSay(plan, e.step, e.reading),
        value: e.value,
        unit: e.unit,
        limit: limit ?? null,
        within: e.within,
      },
    ];
  });
