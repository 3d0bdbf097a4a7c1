import { AFTER_PASSES, asksAfterPasses, type Plan, partsOf, stepIn } from '../core/job/plan';

/** A state node of the machine: its key and what is inside it. Leaves are the places a job can be at. */
export type Node = { readonly key: string; readonly id: string; readonly inside: readonly Node[] };

const leaf = (key: string, id: string): Node => ({ key, id, inside: [] });

/** The nodes of a plan: phases hold steps, a tightening holds its passes, a pass its parts. Ids match `nodeOf`. */
export function nodesOf(plan: Plan): readonly Node[] {
  const phases = plan.procedure.phases.map(
    (phase): Node => ({ key: phase.id, id: phase.id, inside: phase.steps.map((s) => stepNode(plan, phase.id, s.id)) }),
  );
  return [...phases, leaf('paused', 'paused'), leaf('closing', 'closing'), leaf('closed', 'closed')];
}

function stepNode(plan: Plan, phase: string, step: string): Node {
  const id = `${phase}.${step}`;
  const { passes, step: planned } = stepIn(plan, step);
  const inside = passes.map(
    (pass, index): Node => ({
      key: pass.id,
      id: `${id}.${pass.id}`,
      inside: partsOf(passes, index).map((part) => leaf(part, `${id}.${pass.id}.${part}`)),
    }),
  );
  const after = passes.length > 0 && asksAfterPasses(planned) ? [leaf(AFTER_PASSES, `${id}.${AFTER_PASSES}`)] : [];
  return { key: step, id, inside: [...inside, ...after] };
}

export const leavesOf = (nodes: readonly Node[]): readonly Node[] =>
  nodes.flatMap((node) => (node.inside.length === 0 ? [node] : leavesOf(node.inside)));
