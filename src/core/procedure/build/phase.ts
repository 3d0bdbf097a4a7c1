import type { BlockText, PhaseText, StepText } from '../document/steps';
import type { Path, Report } from '../issue';
import { checkId, fill, type Placed, reportTwice, reportUnfilled, type Turn, turnCount, turns } from '../repeat';

/** More than this is a repeat gone wrong, not a job. */
const MOST_STEPS = 1000;

/** A step after `for:`, with whether a `for:` made it: the mend for an id given twice differs. */
export type PlacedStepText = Placed<StepText> & { readonly repeated: boolean };

/** Counts the steps before `for:` writes them out: a small file can ask for more than fits in memory. */
export function isTooLong(phases: readonly PhaseText[], report: Report): boolean {
  const count = phases.flatMap(({ steps }) => steps.map(stepCount)).reduce((sum, steps) => sum + steps, 0);
  if (count > MOST_STEPS) {
    report.error('too-many-steps', ['phases'], String(count), { most: MOST_STEPS });
  }
  return count > MOST_STEPS;
}

const stepCount = (entry: StepText | BlockText): number =>
  turnCount(entry.for) * (isBlock(entry) ? entry.steps.reduce((sum, step) => sum + turnCount(step.for), 0) : 1);

/** The steps of a phase in the order they are done. A block is done in full for one side, then for the next. */
export function expandPhase(phase: PhaseText, at: Path, report: Report): readonly PlacedStepText[] {
  return phase.steps.flatMap((entry, index) => {
    const here = [...at, 'steps', index];
    return isBlock(entry) ? expandBlock(entry, here, report) : expandStep(entry, new Map(), here, report);
  });
}

const isBlock = (entry: StepText | BlockText): entry is BlockText => entry.kind === 'each';

const expandBlock = (block: BlockText, at: Path, report: Report): readonly PlacedStepText[] =>
  turns(block.for, new Map(), [...at, 'for'], report).flatMap((turn) =>
    block.steps.flatMap((step, index) => expandStep(step, turn, [...at, 'steps', index], report)),
  );

function expandStep(text: StepText, outer: Turn, at: Path, report: Report): readonly PlacedStepText[] {
  const { for: repeat, ...once } = text;
  const repeated = repeat !== undefined || outer.size > 0;
  return turns(repeat, outer, [...at, 'for'], report).map((turn) => {
    // Leaving out `for` changes no other key, which spreading a union of shapes loses sight of.
    const value = fill(once as StepText, turn);
    reportUnfilled(value, at, report);
    return { at, value, repeated };
  });
}

/** Ids of phases differ from one another, and so do ids of steps. */
export function checkStepIds(
  phases: readonly { readonly id: string; readonly at: Path }[],
  steps: readonly PlacedStepText[],
  report: Report,
): void {
  const seen = new Set<string>();
  for (const { id, at } of phases) {
    checkId(id, [...at, 'id'], report);
    if (seen.has(id)) reportTwice(id, false, [...at, 'id'], report);
    seen.add(id);
  }
  const stepIds = new Set<string>();
  for (const { at, value, repeated } of steps) {
    checkId(value.id, [...at, 'id'], report);
    if (stepIds.has(value.id)) reportTwice(value.id, repeated, [...at, 'id'], report);
    stepIds.add(value.id);
  }
}
