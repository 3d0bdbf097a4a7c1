import { MILESTONES, type Step } from '../procedure/procedure';
import type { Job } from './job';
import { type PassPart, type Place, partsOf, stepIn } from './plan';
import { boltsLeft, expectedBolt, isComplete, type PassStates, passState } from './tightening';

const NO_PASSES: PassStates = new Map();

export const passStatesOf = (job: Job, step: string): PassStates => job.tightening.get(step) ?? NO_PASSES;

/** Whether the answers so far leave this step out. A step whose question is not answered yet still stands. */
export function isLeftOut(job: Job, step: Step): boolean {
  if (!step.only) return false;
  const answer = job.answers.get(step.only.step);
  return answer !== undefined && !step.only.answers.includes(answer);
}

const places = new WeakMap<Job, Place>();

/** Where the work is, paused or not. Asked all the time, so it is worked out once for each job. */
export function workPlace(job: Job): Place {
  const place = places.get(job) ?? findPlace(job);
  places.set(job, place);
  return place;
}

/** The first step that is neither done, skipped nor left out; a skipped one comes back when it can wait no longer. */
function findPlace(job: Job): Place {
  const next = nextStep(job);
  const step = skippedAndDue(job, next) ?? next;
  return step ? placeInStep(job, step) : { kind: 'closing' };
}

function nextStep(job: Job): Step | undefined {
  for (const id of job.plan.order) {
    const { step } = stepIn(job.plan, id);
    if (!job.steps.has(id) && !isLeftOut(job, step)) return step;
  }
  return undefined;
}

/** The first skipped step that blocks the milestone to be passed next, or any where the steps are at their end. */
function skippedAndDue(job: Job, next: Step | undefined): Step | undefined {
  if (next && !next.milestone) return undefined;
  const reached = next?.milestone ? MILESTONES.indexOf(next.milestone) : MILESTONES.length;
  const due = job.plan.order.find((id) => {
    const end = job.ends.get(id);
    return end?.why === 'skipped' && MILESTONES.indexOf(end.blocks) <= reached;
  });
  return due === undefined ? undefined : stepIn(job.plan, due).step;
}

function placeInStep(job: Job, step: Step): Place {
  const { passes } = stepIn(job.plan, step.id);
  const states = passStatesOf(job, step.id);
  for (const [index, pass] of passes.entries()) {
    const state = passState(states, pass.id);
    if (isComplete(pass, state)) continue;
    const parts = partsOf(passes, index);
    const part = parts.find((p) => isAt(p)) ?? 'work';
    return { kind: 'pass', step: step.id, pass: pass.id, part };

    function isAt(part: PassPart): boolean {
      switch (part) {
        case 'set':
          return state.setting === null;
        case 'mark':
          return !state.marked;
        case 'work':
          return boltsLeft(pass, state) > 0;
        case 'sort':
          return state.orderBroken;
        case 'wait':
          return true;
      }
    }
  }
  return { kind: 'step', step: step.id };
}

/** The place the machine must be at. Everything that moves the machine asks this. */
export function placeOf(job: Job): Place {
  if (job.status === 'closed') return { kind: 'closed' };
  if (job.paused) return { kind: 'paused' };
  return workPlace(job);
}

/** What the next bare report would be about: a fastener, a reading, or nothing finer than the place. */
export function cursorOf(job: Job): string {
  const place = workPlace(job);
  if (place.kind === 'pass') {
    const pass = stepIn(job.plan, place.step).passes.find((p) => p.id === place.pass);
    return pass ? String(expectedBolt(pass, passState(passStatesOf(job, place.step), pass.id)) ?? '') : '';
  }
  if (place.kind === 'step') return nextReading(job, place.step)?.id ?? '';
  return '';
}

/** The first reading of a measuring step that has not been given yet. */
export function nextReading(job: Job, stepId: string) {
  const { step } = stepIn(job.plan, stepId);
  if (step.kind !== 'measure') return undefined;
  const given = job.readings.get(stepId);
  return step.readings.find((r) => !given?.has(r.id));
}
