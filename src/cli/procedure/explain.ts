import { announce } from '../../core/job/announce';
import { planOf, stepIn } from '../../core/job/plan';
import { MILESTONES, type Procedure, type Step } from '../../core/procedure/procedure';
import type { Tongue } from '../../core/tongue';
import { placesOf, type ReachedPlace } from '../authoring/places';
import { sayableAt } from '../authoring/sayable';
import { commonRules, headOf, sayableLine } from '../phrases';
import { EXIT } from './check';
import type { ProcedureIo } from './io';
import { noSuch, withTongue } from './read';

export const EXPLAIN_USAGE =
  'explain FILE STEP   what is spoken there, what can be said, what blocks it, what it opens and closes';

export const explain = (argv: readonly string[], io: ProcedureIo): Promise<number> =>
  withTongue(argv, 2, EXPLAIN_USAGE, io, (procedure, tongue, [id = '']) => {
    const plan = planOf(procedure);
    if (!plan.steps.has(id)) return noSuch('step', id, plan.order, io);
    for (const line of explanation(procedure, id, tongue)) io.print(line);
    return EXIT.fine;
  });

function* explanation(procedure: Procedure, id: string, tongue: Tongue): Generator<string> {
  const { step, phase } = stepIn(planOf(procedure), id);
  const node = `${phase.id}.${id}`;
  const everywhere = placesOf(procedure);
  const places = everywhere.filter((place) => place.node === node || place.node.startsWith(`${node}.`));
  const common = commonRules(everywhere);
  yield `${node} (${step.kind}): ${step.say}`;
  yield* section('Spoken', spoken(places, step, tongue));
  yield* section('Blocked until', blocks(procedure, step));
  yield* section('Opens', ends(procedure, step.opens));
  yield* section('Closes', ends(procedure, step.closes));
  yield* section('Starts', timers(procedure, step));
  for (const place of places.filter(({ after }) => after === ''))
    yield* section(
      `Can be said at ${headOf(place)}, besides what can be said everywhere`,
      sayableAt(place, tongue)
        .filter(({ rule }) => !common.has(rule))
        .map(sayableLine),
    );
}

function* section(title: string, lines: readonly string[]): Generator<string> {
  if (lines.length === 0) return;
  yield `${title}:`;
  yield* lines.map((line) => (line.startsWith('  ') ? line : `  ${line}`));
}

/** What is said on arriving, part by part, and after a wrong answer. */
function spoken(places: readonly ReachedPlace[], step: Step, tongue: Tongue): readonly string[] {
  const arrivals = places.filter(({ after }) => after === '');
  return [
    ...arrivals.map(({ node, job, now }) => {
      const part = arrivals.length > 1 ? `${node.split('.').slice(2).join('.')}: ` : '';
      return `${part}${tongue.phrase(announce(job, now)).spoken}`;
    }),
    ...(step.question?.ifWrong ? [`after a wrong answer: ${step.question.ifWrong}`] : []),
  ];
}

function blocks(procedure: Procedure, step: Step): readonly string[] {
  const { milestone, needsTimers, only, question } = step;
  const reached = milestone === undefined ? -1 : MILESTONES.indexOf(milestone);
  const blocking = [...procedure.looseEnds.values()].filter(
    ({ id, blocks: at }) => !step.closes.includes(id) && MILESTONES.indexOf(at) <= reached,
  );
  const waits = [...needsTimers, ...(step.kind === 'wait' ? [step.timer] : [])];
  return [
    ...(only ? [`"${only.step}" has been answered ${only.answers.join(' or ')}; otherwise it is left out`] : []),
    ...waits.map(
      (id) => `the wait is over: ${procedure.timers.get(id)?.say ?? id}, ${procedure.timers.get(id)?.minutes} min`,
    ),
    ...(question ? [`it is answered: ${rightAnswers(step)}`] : []),
    ...(step.kind === 'measure' ? [`it is measured: ${step.readings.map(({ say }) => say).join(', ')}`] : []),
    ...(step.kind === 'tighten' || step.kind === 'slacken'
      ? [`every pass is done: ${step.passes.map(({ say }) => say).join(', ')}`]
      : []),
    ...(milestone === undefined
      ? []
      : [`for the milestone ${milestone}, nothing dropped, skipped or taken off is still open`]),
    ...blocking.map(({ say }) => `    ${say}`),
  ];
}

const rightAnswers = ({ question }: Step): string =>
  (question?.answers ?? [])
    .filter(({ right }) => right)
    .map(({ say }) => `"${say[0]}"`)
    .join(' or ');

const ends = ({ looseEnds }: Procedure, ids: readonly string[]): readonly string[] =>
  ids.map((id) => `${looseEnds.get(id)?.say ?? id}, which blocks ${looseEnds.get(id)?.blocks ?? 'nothing'}`);

const timers = (procedure: Procedure, { startsTimers }: Step): readonly string[] =>
  startsTimers.map((id) => `${procedure.timers.get(id)?.say ?? id}, ${procedure.timers.get(id)?.minutes} min`);
