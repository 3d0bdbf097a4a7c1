import type { Moment } from '../../core/job/entry';
import type { Job } from '../../core/job/job';
import { offersOf } from '../../core/job/offers';
import { placeOf } from '../../core/job/place';
import { nodeOf, type Plan, planOf, stepIn } from '../../core/job/plan';
import type { Offer } from '../../core/language/grammar';
import type { Procedure } from '../../core/procedure/procedure';
import { type Answers, onward } from './onward';
import { sideTrips } from './side-trips';
import { beginTrial, momentOf, type Trial } from './trial';

/** A place of a procedure that a job can get to, with the job as it stands there. */
export type ReachedPlace = {
  /** The state node: `phase.step`, `phase.step.pass.part`, `paused`, `closing` or `closed`. */
  readonly node: string;
  /** What happened on the way; empty when the work simply got here. */
  readonly after: string;
  /** The kind of question that waits for its answer here. */
  readonly asking: string | null;
  readonly offers: readonly Offer[];
  readonly job: Job;
  readonly now: Moment;
};

/**
 * Every place of a procedure where other things can be said, in the order of the job, found by working through it
 * with legal commands: once for each answer that opens a step, and from each place the ways beside the work.
 * A break and an open question sound alike wherever they happen; they are told once for each set of sentences.
 */
export function placesOf(procedure: Procedure): readonly ReachedPlace[] {
  const plan = planOf(procedure);
  const found = new Map<string, ReachedPlace>();
  for (const answers of answerSets(plan)) walk(plan, answers, found);
  const rank = new Map([...plan.order].map((id, index) => [id, index]));
  const rankOf = ({ node }: ReachedPlace): number => rank.get(node.split('.')[1] ?? '') ?? rank.size;
  return [...found.values()].toSorted((a, b) => rankOf(a) - rankOf(b));
}

function walk(plan: Plan, answers: Answers, found: Map<string, ReachedPlace>): void {
  let trial: Trial | undefined = beginTrial(plan);
  // Each command of the way does something, so twice as many as there are things to do is never reached.
  for (let left = MOST_COMMANDS; trial && left > 0; left--) {
    const key = nodeHere(trial);
    if (!found.has(key)) {
      found.set(key, placeHere(trial, ''));
      for (const side of sideTrips(trial)) {
        const place = placeHere(side.trial, side.after);
        const beside = keyBeside(place);
        if (!found.has(beside)) found.set(beside, place);
      }
    }
    trial = onward(trial, answers);
  }
}

const MOST_COMMANDS = 20_000;

const nodeHere = ({ job }: Trial): string => nodeOf(job.plan, placeOf(job));

/** Where nothing but a question or a break counts, its sentences are the place; else the node and what happened. */
function keyBeside({ node, after, asking, offers }: ReachedPlace): string {
  const sentences = JSON.stringify(offers);
  return asking === null && node !== 'paused' ? `${node} ${after} ${sentences}` : `${asking ?? node} ${sentences}`;
}

const placeHere = (trial: Trial, after: string): ReachedPlace => ({
  node: nodeHere(trial),
  after,
  asking: trial.job.pending?.kind ?? null,
  offers: offersOf(trial.job),
  job: trial.job,
  now: momentOf(trial),
});

/** Answers for as many runs as are needed to come to every step: the first right ones, then what each branch asks for. */
function answerSets(plan: Plan): readonly Answers[] {
  const sets = [new Map<string, string>()];
  for (const id of plan.order) {
    const wanted = answersTo(plan, id);
    const isCovered = sets.some((set) => [...wanted].every(([step, answer]) => answerIn(plan, set, step) === answer));
    if (!isCovered) sets.push(wanted);
  }
  return sets;
}

/** The answers that lead to a step, through the branches its questions are themselves in. */
function answersTo(plan: Plan, id: string): Map<string, string> {
  const { only } = stepIn(plan, id).step;
  if (!only) return new Map();
  const usual = answerIn(plan, new Map(), only.step) ?? '';
  const answer = only.answers.includes(usual) ? usual : (only.answers[0] ?? '');
  return answersTo(plan, only.step).set(only.step, answer);
}

const answerIn = (plan: Plan, answers: Answers, step: string): string | undefined =>
  answers.get(step) ?? stepIn(plan, step).step.question?.answers.find(({ right }) => right)?.id;
