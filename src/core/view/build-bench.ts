import { announce, whereIs } from '../job/announce';
import type { RuleName } from '../job/command';
import { passAt } from '../job/decide/bolt';
import { fits } from '../job/decide/choose-wrench';
import type { Moment } from '../job/entry';
import { otherWrenches } from '../job/fitting-wrenches';
import { holdOf } from '../job/hold';
import type { Job } from '../job/job';
import { placeOf, workPlace } from '../job/place';
import { stepIn } from '../job/plan';
import { revisionOf } from '../job/revision';
import { isTorque } from '../job/setting';
import { teachingOffers } from '../job/teaching';
import { boltState, expectedBolt } from '../job/tightening';
import { count, type Reply, reply, text } from '../phrasing/reply';
import { buttonsOf } from './bench-buttons';
import { drawingOf, swingOf } from './bench-drawing';
import { timersOf } from './bench-timers';
import { type AlsoIn, valueAlsoNow, valueNow } from './bench-value';
import type { BenchView } from './bench-view';
import { likeliest } from './likeliest-words';
import { questionNow } from './question-now';

/** How the view is put into words: shown text for a reply, and labels of the screen by key. */
export type ViewWords = {
  readonly show: (replies: readonly Reply[]) => string;
  readonly label: (rule: RuleName) => string;
  /** What can be said now: an example sentence by rule. */
  readonly examples: ReadonlyMap<string, string>;
  /** The units shown beside the printed ones. */
  readonly alsoIn?: AlsoIn;
};

/** The Bench as it must look for this job at this moment. */
export function benchView(job: Job, now: Moment, words: ViewWords): BenchView {
  const at = passAt(job);
  const place = placeOf(job);
  const work = workPlace(job);
  const planned = work.kind === 'step' || work.kind === 'pass' ? stepIn(job.plan, work.step) : undefined;
  const question = job.pending ? questionNow(job, job.pending) : undefined;
  const value = question ? question.value : valueNow(job);
  const rules = teachingOffers(job).map((o) => o.rule as RuleName);
  return {
    title: job.plan.procedure.title,
    revision: revisionOf(job),
    demonstration: job.plan.procedure.demonstration,
    phase: planned?.phase.say ?? '',
    placeWords: planned ? words.show(placeWords(job)) : job.plan.procedure.title,
    line: words.show(question ? [question.line] : lineNow(job, now)),
    value: shownOr(value, words),
    valueAlso: question ? shownOr(question.also, words) : (valueAlsoNow(job, words.alsoIn)?.printed ?? null),
    hazards: [
      ...(planned?.step.warnings ?? []).map((t) => ({ kind: 'warning' as const, text: t })),
      ...(planned?.step.cautions ?? []).map((t) => ({ kind: 'caution' as const, text: t })),
      ...(planned?.step.notes ?? []).map((t) => ({ kind: 'note' as const, text: t })),
    ],
    drawing: at ? drawingOf(job, words.show) : null,
    swing: swingOf(job, words.show),
    looseEnds: [...job.ends.values()].map((e) =>
      e.why === 'dropped' ? words.show([reply('end-dropped', {})]) : e.what,
    ),
    timers: timersOf(job, now),
    wrenches: rules.includes('use-size') ? otherWrenchesNow(job, words) : [],
    words: likeliest(rules).flatMap((rule) => {
      const example = words.examples.get(rule);
      return example === undefined ? [] : [{ rule, example }];
    }),
    buttons: buttonsOf(rules, words.label),
    mood: place.kind === 'closed' ? 'closed' : place.kind === 'paused' ? 'paused' : job.pending ? 'asking' : 'working',
  };
}

const shownOr = (one: Reply | undefined, words: ViewWords): string | null => (one ? words.show([one]) : null);

function otherWrenchesNow(job: Job, words: ViewWords): BenchView['wrenches'] {
  const at = passAt(job);
  if (!at || !isTorque(at.pass)) return [];
  return otherWrenches(job, at.pass).map((one) => ({ id: one.wrench.id, words: words.show([fits(one)]) }));
}

function placeWords(job: Job): readonly Reply[] {
  const at = passAt(job);
  const work = workPlace(job);
  if (at)
    return [
      reply('shown-pass', {
        number: count(at.passes.indexOf(at.pass) + 1),
        total: count(at.passes.length),
        done: count(at.pass.order.filter((b) => boltState(at.state, b).kind === 'done').length),
        bolts: count(at.pass.order.length),
      }),
    ];
  if (work.kind !== 'step') return [];
  const { phase, step } = stepIn(job.plan, work.step);
  return [reply('shown-step', { number: count(phase.steps.indexOf(step) + 1), total: count(phase.steps.length) })];
}

/** What has its own place on the Bench: hazards, phase and pass at the top, the way a drawing is looked at under it. */
const NOT_IN_THE_LINE: ReadonlySet<Reply['code']> = new Set([
  'seen-from',
  'warning',
  'caution',
  'note',
  'phase-begins',
  'pass-begins',
]);

function lineNow(job: Job, now: Moment): readonly Reply[] {
  const hold = holdOf(job);
  if (hold) return [reply('job-on-hold', { bolt: count(hold.bolt) })];
  const at = passAt(job);
  if (at?.part === 'work' && placeOf(job).kind === 'pass') {
    const bolt = expectedBolt(at.pass, at.state);
    if (bolt !== undefined)
      return [reply('shown-bolt', { bolt: count(bolt), where: text(whereIs(job, at.step, bolt)) })];
  }
  return announce(job, now).filter((r) => !NOT_IN_THE_LINE.has(r.code));
}
