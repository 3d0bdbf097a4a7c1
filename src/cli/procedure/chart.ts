import { type Plan, planOf, stepIn } from '../../core/job/plan';
import type { Procedure, Step } from '../../core/procedure/procedure';
import { leavesOf, type Node, nodesOf } from '../../machine/nodes';
import { EXIT } from './check';
import type { ProcedureIo } from './io';
import { withProcedure } from './read';

export const CHART_USAGE = 'chart FILE   prints the machine of a procedure as a Mermaid state diagram';

export const chart = (argv: readonly string[], io: ProcedureIo): Promise<number> =>
  withProcedure(argv, 1, CHART_USAGE, io, (procedure) => {
    io.print(chartOf(procedure).trimEnd());
    return EXIT.fine;
  });

/**
 * The states of the compiled machine and the way of the work through them. Any state can be left for `paused` and
 * come back to, and undoing jumps back, so those arrows are left out: they would hide the job.
 */
export function chartOf(procedure: Procedure): string {
  const plan = planOf(procedure);
  const nodes = nodesOf(plan);
  const lines = [
    'stateDiagram-v2',
    ...nodes.flatMap((node) => stateLines(node, plan, '  ')),
    ...arrows(plan, nodes).map((arrow) => `  ${arrow}`),
  ];
  return `${lines.join('\n')}\n`;
}

function stateLines(node: Node, plan: Plan, indent: string): readonly string[] {
  const head = `${indent}state "${labelOf(node, plan)}" as ${nameOf(node.id)}`;
  if (node.inside.length === 0) return [head];
  return [`${head} {`, ...node.inside.flatMap((inner) => stateLines(inner, plan, `${indent}  `)), `${indent}}`];
}

function labelOf({ id, key }: Node, plan: Plan): string {
  const [phase, step, pass, part] = id.split('.');
  if (part !== undefined) return part;
  if (pass !== undefined && step !== undefined)
    return plain(stepIn(plan, step).passes.find((one) => one.id === pass)?.say ?? pass);
  if (step !== undefined) return plain(stepIn(plan, step).step.say);
  return plain(plan.procedure.phases.find((one) => one.id === phase)?.say ?? key);
}

/** Signs that end or split a Mermaid label. */
const plain = (text: string): string => text.replaceAll('"', '’').replace(/[#;:{}\n]+/g, ',');

/** Ids hold small letters, digits and dashes, so a capital letter keeps the parts of a name apart. */
const nameOf = (id: string): string => id.replaceAll('-', '_').replaceAll('.', '_X_');

/** One step of the way: its states in order. `step` is null for the end of the job. */
type Stop = { readonly step: Step | null; readonly leaves: readonly string[] };

function arrows(plan: Plan, nodes: readonly Node[]): readonly string[] {
  const leaves = leavesOf(nodes).map(({ id }) => id);
  const stops = plan.order.map((id): Stop => {
    const { step, phase } = stepIn(plan, id);
    const own = `${phase.id}.${id}`;
    return { step, leaves: leaves.filter((leaf) => leaf === own || leaf.startsWith(`${own}.`)) };
  });
  const way: readonly Stop[] = [...stops, { step: null, leaves: ['closing'] }];
  return [
    ...way.flatMap((stop, index) => arrowsInto(stop, way.slice(0, index), plan)),
    ...stops.flatMap(({ leaves: own }) => own.slice(1).flatMap((to, index) => arrowsTo(to, own.slice(0, index + 1)))),
    'closing --> closed',
    'closed --> [*]',
  ];
}

/** Putting an order right is only gone to after work out of order; otherwise it is passed by. */
const isSort = (leaf: string | undefined): boolean => leaf?.endsWith('.sort') ?? false;

const exitsOf = (leaves: readonly string[]): readonly string[] => leaves.slice(isSort(leaves.at(-1)) ? -2 : -1);

const arrowsTo = (to: string, before: readonly string[]): readonly string[] =>
  exitsOf(before).map((from) => `${nameOf(from)} --> ${nameOf(to)}${isSort(to) ? ' : out of order' : ''}`);

function arrowsInto({ step, leaves }: Stop, before: readonly Stop[], plan: Plan): readonly string[] {
  const to = nameOf(leaves[0] ?? '');
  const label = step?.only ? ` : ${answersOf(step.only, plan)}` : '';
  return entriesTo(before, step).map((from) => `${from} --> ${to}${label}`);
}

/** Where a step can be come to from: the one before, and past every one that may be left out also those before it. */
function entriesTo(before: readonly Stop[], step: Step | null): readonly string[] {
  const entries: string[] = [];
  for (const stop of before.toReversed()) {
    if (stop.step && excludes(stop.step, step)) continue;
    entries.push(...exitsOf(stop.leaves).map(nameOf));
    if (!stop.step?.only || isSureWith(stop.step, step)) return entries;
  }
  return [...entries, '[*]'];
}

/** Two steps that hang on other answers to the same question are never both done. */
const excludes = (a: Step, b: Step | null): boolean =>
  a.only !== undefined && b?.only?.step === a.only.step && !a.only.answers.some((id) => b.only?.answers.includes(id));

/** Whether one is always done where the other is. */
const isSureWith = (a: Step, b: Step | null): boolean =>
  b?.only !== undefined && b.only.step === a.only?.step && b.only.answers.every((id) => a.only?.answers.includes(id));

function answersOf(only: NonNullable<Step['only']>, { steps }: Plan): string {
  const question = steps.get(only.step)?.step.question;
  return plain(only.answers.map((id) => question?.answers.find((one) => one.id === id)?.say[0] ?? id).join(' / '));
}
