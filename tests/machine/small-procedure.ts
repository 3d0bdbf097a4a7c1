import type { EntryBody } from '../../src/core/job/entry';
import type { Milestone, Phase, Procedure, Step } from '../../src/core/procedure/procedure';

/** Answers to the questions that later steps depend on, by step. */
type Answers = ReadonlyMap<string, string>;

/** Some steps made into a procedure of their own, and the log entries that bring a job to their beginning. */
export type Stretch = { readonly name: string; readonly procedure: Procedure; readonly before: readonly EntryBody[] };

// Long enough to go back and forth over step boundaries, short enough to be walked whole.
const STEPS_A_STRETCH = 8;

/**
 * A procedure as short stretches, each from every way the answers before it can leave it. What a stretch can see of the
 * earlier steps is their answers, open ends and timers, so walking each stretch walks the whole job.
 */
export function stretchesOf(procedure: Procedure): readonly Stretch[] {
  const small = cut(procedure);
  const all = small.phases.flatMap((phase) => phase.steps);
  return small.phases.flatMap((phase) =>
    chunks(phase.steps).flatMap((steps) => {
      const [first] = steps;
      if (!first) return [];
      const earlier = all.slice(0, all.indexOf(first));
      return answersBefore(earlier, steps).flatMap((answers): readonly Stretch[] => {
        const left = stepsLeft(steps, earlier, answers);
        if (left.length === 0) return [];
        const alone: Phase = { ...phase, steps: left };
        return [
          {
            name: [first.id, ...answers.values()].join(', '),
            procedure: { ...small, phases: [alone] },
            before: leftBehind(small, earlier, left, answers),
          },
        ];
      });
    }),
  );
}

/** Patterns cut to three fasteners, or to two where the passes work on subsets of one. */
function cut(procedure: Procedure): Procedure {
  const cutStep = (step: Step): Step => {
    if (step.kind !== 'tighten' && step.kind !== 'slacken') return step;
    const sizes = new Set(step.passes.filter((p) => p.kind !== 'wait').map((p) => [...p.order].sort().join()));
    const most = sizes.size > 1 ? 2 : 3;
    return { ...step, passes: step.passes.map((p) => ({ ...p, order: p.order.slice(0, most) })) };
  };
  return { ...procedure, phases: procedure.phases.map((p) => ({ ...p, steps: p.steps.map(cutStep) })) };
}

function chunks<T>(all: readonly T[]): readonly (readonly T[])[] {
  const many = Math.ceil(all.length / STEPS_A_STRETCH);
  return Array.from({ length: many }, (_, i) => all.slice(i * STEPS_A_STRETCH, (i + 1) * STEPS_A_STRETCH));
}

/** Every combination of the earlier answers that one of these steps depends on. */
function answersBefore(earlier: readonly Step[], steps: readonly Step[]): readonly Answers[] {
  const asked = new Set(steps.flatMap((s) => (s.only ? [s.only.step] : [])));
  return earlier
    .filter((s) => asked.has(s.id))
    .reduce<readonly Answers[]>(
      (all, step) =>
        all.flatMap((answers) => (step.question?.answers ?? []).map((a) => new Map(answers).set(step.id, a.id))),
      [new Map()],
    );
}

/** The steps that the earlier answers leave standing, no longer depending on them. */
function stepsLeft(steps: readonly Step[], earlier: readonly Step[], answers: Answers): readonly Step[] {
  const known = new Set(earlier.map((s) => s.id));
  return steps
    .filter((s) => isKept(s, answers))
    .map((s): Step => {
      if (!s.only || !known.has(s.only.step)) return s;
      const { only: _, ...rest } = s;
      return rest;
    });
}

const isKept = (step: Step, answers: Answers): boolean => {
  const given = step.only && answers.get(step.only.step);
  return given === undefined || step.only?.answers.includes(given) === true;
};

/**
 * What the earlier steps leave open and running when the document is followed. Of the ends that these steps do not
 * close, one for each milestone stands for the rest; one that would stop these steps is not left out by the document.
 */
function leftBehind(
  { looseEnds, timers }: Procedure,
  earlier: readonly Step[],
  steps: readonly Step[],
  answers: Answers,
): readonly EntryBody[] {
  const open = new Set<string>();
  const running = new Set<string>();
  for (const step of earlier.filter((s) => isKept(s, answers))) {
    for (const id of step.closes) open.delete(id);
    for (const id of step.opens) open.add(id);
    for (const id of [...step.startsTimers, ...(step.kind === 'wait' ? [step.timer] : [])]) running.add(id);
  }
  const closed = new Set(steps.flatMap((s) => s.closes));
  const stood = new Set<Milestone>();
  return [
    ...[...open].flatMap((id): readonly EntryBody[] => {
      const spec = looseEnds.get(id);
      if (!spec || (!closed.has(id) && stood.has(spec.blocks))) return [];
      if (!closed.has(id)) stood.add(spec.blocks);
      return [{ kind: 'end-opened', end: id, what: spec.say, blocks: spec.blocks, why: 'came-off' }];
    }),
    ...[...running].flatMap((id): readonly EntryBody[] => {
      const spec = timers.get(id);
      return spec ? [{ kind: 'timer-started', timer: id, ms: spec.minutes * 60_000 }] : [];
    }),
  ];
}
