import type { Step } from '../procedure/procedure';
import type { CoolantRule, NamedReading, ReadingsRule } from '../sums/rule';
import type { Job } from './job';
import { workPlace } from './place';
import { stepIn } from './plan';

const rulesOf = (job: Job, step: Step) =>
  (step.kind === 'measure' || step.kind === 'fill' ? (step.worksOut ?? []) : []).flatMap(
    (id) => job.plan.procedure.rules.get(id) ?? [],
  );

export const readingsRules = (job: Job, step: Step): readonly ReadingsRule[] =>
  rulesOf(job, step).filter((rule) => rule.kind === 'readings');

/** The rule about the coolant of the step being worked, if it has one. */
export function coolantRule(job: Job): CoolantRule | undefined {
  const place = workPlace(job);
  if (place.kind !== 'step') return undefined;
  return rulesOf(job, stepIn(job.plan, place.step).step).find((rule) => rule.kind === 'coolant');
}

/** The step whose readings can be worked out here: the one being worked, or the one just done. */
export function sumStep(job: Job): Step | undefined {
  const place = workPlace(job);
  if (place.kind !== 'step') return undefined;
  const last = job.entries.findLast(({ kind, seq }) => kind === 'step-done' && !job.undone.has(seq));
  const ids = [place.step, ...(last?.kind === 'step-done' ? [last.step] : [])];
  return ids.map((id) => stepIn(job.plan, id).step).find((step) => readingsRules(job, step).length > 0);
}

/** The readings given in a step, by name, in the order of the document. */
export function readingsIn(job: Job, id: string): readonly NamedReading[] {
  const { step } = stepIn(job.plan, id);
  const given = job.readings.get(id);
  if (step.kind !== 'measure' || !given) return [];
  return step.readings.flatMap((spec) => {
    const reading = given.get(spec.id);
    return reading ? [{ id: spec.id, say: spec.say, value: reading.value, unit: reading.unit }] : [];
  });
}
