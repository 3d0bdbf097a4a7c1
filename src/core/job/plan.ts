import type { Pass, Phase, Procedure, Step } from '../procedure/procedure';

/** A procedure laid out as the places a job can be at, in order. The machine's state nodes are made from these. */
export type Plan = {
  readonly procedure: Procedure;
  readonly steps: ReadonlyMap<string, PlannedStep>;
  readonly order: readonly string[];
};

export type PlannedStep = { readonly phase: Phase; readonly step: Step; readonly passes: readonly Pass[] };

/** Where inside a pass: wrench being set, heads being marked, bolts worked, order being put right, or waiting. */
export type PassPart = 'set' | 'mark' | 'work' | 'sort' | 'wait';

export type Place =
  | { readonly kind: 'step'; readonly step: string }
  | { readonly kind: 'pass'; readonly step: string; readonly pass: string; readonly part: PassPart }
  | { readonly kind: 'paused' }
  | { readonly kind: 'closing' }
  | { readonly kind: 'closed' };

export const passesOf = (step: Step): readonly Pass[] =>
  step.kind === 'tighten' || step.kind === 'slacken' ? step.passes : [];

export function planOf(procedure: Procedure): Plan {
  const steps = new Map<string, PlannedStep>();
  for (const phase of procedure.phases)
    for (const step of phase.steps) steps.set(step.id, { phase, step, passes: passesOf(step) });
  return { procedure, steps, order: [...steps.keys()] };
}

/** The step of this id; asking for one that the procedure does not have is a bug. */
export function stepIn(plan: Plan, id: string): PlannedStep {
  const found = plan.steps.get(id);
  if (!found) throw new Error(`no step ${id} in ${plan.procedure.id}`);
  return found;
}

export function passIn(plan: Plan, step: string, pass: string): Pass {
  const found = stepIn(plan, step).passes.find((p) => p.id === pass);
  if (!found) throw new Error(`no pass ${pass} in step ${step}`);
  return found;
}

/** The parts a pass goes through. An angle right after an angle keeps the marks it has. */
export function partsOf(passes: readonly Pass[], index: number): readonly PassPart[] {
  const pass = passes[index];
  if (!pass) return [];
  switch (pass.kind) {
    case 'torque':
    case 'repeat':
      return ['set', 'work', 'sort'];
    case 'angle':
      return marksCarryOn(passes, index) ? ['set', 'work', 'sort'] : ['set', 'mark', 'work', 'sort'];
    case 'slacken':
      return ['work', 'sort'];
    case 'wait':
      return ['wait'];
  }
}

/** Marks stay true only while nothing but angles has turned these bolts since they were made. */
export function marksCarryOn(passes: readonly Pass[], index: number): boolean {
  const pass = passes[index];
  if (!pass) return false;
  for (let i = index - 1; i >= 0; i--) {
    const before = passes[i];
    if (!before || before.kind === 'wait') continue;
    const shares = before.order.some((n) => pass.order.includes(n));
    if (!shares) continue;
    return before.kind === 'angle' && pass.order.every((n) => before.order.includes(n));
  }
  return false;
}

/** Key of the place behind the last pass of a tightening; no id of a document can be it. */
export const AFTER_PASSES = '$after';

/** A tightening whose passes are complete is done by itself, unless something is still asked of the person. */
export const asksAfterPasses = (step: Step): boolean => step.question !== undefined || step.milestone !== undefined;

/** The state node of a place: ids have no dots, so the parts join without loss. */
export function nodeOf(plan: Plan, place: Place): string {
  switch (place.kind) {
    case 'step': {
      const { phase, passes } = stepIn(plan, place.step);
      return passes.length > 0 ? `${phase.id}.${place.step}.${AFTER_PASSES}` : `${phase.id}.${place.step}`;
    }
    case 'pass':
      return `${stepIn(plan, place.step).phase.id}.${place.step}.${place.pass}.${place.part}`;
    case 'paused':
    case 'closing':
    case 'closed':
      return place.kind;
  }
}
