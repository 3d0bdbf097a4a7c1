import type { Entry } from '../job/entry';
import type { Plan } from '../job/plan';
import type { PartSpec } from '../procedure/procedure';

/** A part or consumable of the document, and how far the job has got with it. */
export type PartRecord = {
  readonly part: PartSpec;
  /** `used`: every step that needs it is done. `begun`: some are. */
  readonly progress: 'not-yet' | 'begun' | 'used';
  /** Put on the list of things to get. */
  readonly isListed: boolean;
};

/** All parts of the document in its order, from the entries that stand: a part is used when the step that needs it is done. */
export function partsOf(plan: Plan, live: readonly Entry[]): readonly PartRecord[] {
  const done = new Set(live.flatMap((e) => (e.kind === 'step-done' ? [e.step] : [])));
  const listed = new Set(live.flatMap((e) => (e.kind === 'listed' ? [e.part] : [])));
  return [...plan.procedure.parts.values()].map((part) => {
    const steps = [...plan.steps.values()].filter(({ step }) => step.parts.includes(part.id));
    const finished = steps.filter(({ step }) => done.has(step.id)).length;
    const progress = finished === 0 ? 'not-yet' : finished < steps.length ? 'begun' : 'used';
    return { part, progress, isListed: listed.has(part.id) };
  });
}
