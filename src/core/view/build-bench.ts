import type { Printed, UnitIn } from '../fastening/quantity';
import { shownIn } from '../fastening/shown-figure';
import { announce, whereIs } from '../job/announce';
import { MANNERS, type RuleName } from '../job/command';
import { passAt } from '../job/decide/bolt';
import { fits } from '../job/decide/choose-wrench';
import type { Moment } from '../job/entry';
import { otherWrenches } from '../job/fitting-wrenches';
import { holdOf } from '../job/hold';
import type { Job } from '../job/job';
import { nextReading, placeOf, workPlace } from '../job/place';
import { stepIn } from '../job/plan';
import { isTorque, settingOf, type TorquePass } from '../job/setting';
import { teachingOffers } from '../job/teaching';
import { boltState, expectedBolt } from '../job/tightening';
import { timeLeft } from '../job/timer';
import { count, degrees, type Figure, quantity, type Reply, reply, text } from '../phrasing/reply';
import { drawingOf, swingOf } from './bench-drawing';
import type { BenchButton, BenchView } from './bench-view';

/** How the view is put into words: shown text for a reply, and labels of the screen by key. */
export type ViewWords = {
  readonly show: (replies: readonly Reply[]) => string;
  readonly label: (rule: RuleName) => string;
  /** What can be said now: an example sentence by rule. */
  readonly examples: ReadonlyMap<string, string>;
  /** The unit of torque shown beside the printed one; left out, the other usual one. */
  readonly alsoIn?: UnitIn<'torque'>;
};

/** The Bench as it must look for this job at this moment. */
export function benchView(job: Job, now: Moment, words: ViewWords): BenchView {
  const at = passAt(job);
  const place = placeOf(job);
  const work = workPlace(job);
  const planned = work.kind === 'step' || work.kind === 'pass' ? stepIn(job.plan, work.step) : undefined;
  const value = valueNow(job);
  const rules = teachingOffers(job).map((o) => o.rule as RuleName);
  return {
    title: job.plan.procedure.title,
    demonstration: job.plan.procedure.demonstration,
    phase: planned?.phase.say ?? '',
    placeWords: planned ? words.show(placeWords(job)) : '',
    line: words.show(lineNow(job, now)),
    value: value ? words.show([value]) : null,
    valueAlso: valueAlsoNow(job, words.alsoIn)?.printed ?? null,
    hazards: [
      ...(planned?.step.warnings ?? []).map((t) => ({ kind: 'warning' as const, text: t })),
      ...(planned?.step.cautions ?? []).map((t) => ({ kind: 'caution' as const, text: t })),
      ...(planned?.step.notes ?? []).map((t) => ({ kind: 'note' as const, text: t })),
    ],
    drawing: at ? drawingOf(job) : null,
    swing: swingOf(job, words.show),
    looseEnds: [...job.ends.values()].map((e) =>
      e.why === 'dropped' ? words.show([reply('end-dropped', {})]) : e.what,
    ),
    timers: [...job.timers.values()].map((t) => {
      const leftMs = timeLeft(t, now);
      return { say: t.say, leftMs, over: leftMs === 0 };
    }),
    wrenches: rules.includes('use-size') ? otherWrenchesNow(job, words) : [],
    words: likeliest(rules).flatMap((rule) => {
      const example = words.examples.get(rule);
      return example === undefined ? [] : [{ rule, example }];
    }),
    buttons: buttonsOf(rules, words),
    mood: place.kind === 'closed' ? 'closed' : place.kind === 'paused' ? 'paused' : job.pending ? 'asking' : 'working',
  };
}

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

const NOT_IN_THE_LINE: ReadonlySet<Reply['code']> = new Set([
  'warning',
  'caution',
  'note',
  'phase-begins',
  'pass-begins',
]);

function lineNow(job: Job, now: Moment): readonly Reply[] {
  if (job.pending) return [reply('shown-asking', {})];
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

function valueNow(job: Job): Reply | undefined {
  const at = passAt(job);
  if (holdOf(job)) return undefined;
  if (at) {
    switch (at.pass.kind) {
      case 'torque':
      case 'repeat':
        return figure(setNow(job, at.pass));
      case 'angle':
      case 'slacken':
        return reply('shown-degrees', { degrees: degrees(at.pass.degrees) });
      case 'wait':
        return undefined;
    }
  }
  const work = workPlace(job);
  if (work.kind !== 'step') return undefined;
  const { step } = stepIn(job.plan, work.step);
  if (step.kind === 'fill') return figure(step.amount);
  const reading = nextReading(job, step.id);
  return reading ? reply('shown-reading', { reading: text(reading.say) }) : undefined;
}

/** A torque in the other unit that wrenches are marked in: as the document prints it beside its own, else converted. */
function valueAlsoNow(job: Job, alsoIn?: UnitIn<'torque'>): Printed | null {
  const at = passAt(job);
  if ((at?.pass.kind !== 'torque' && at?.pass.kind !== 'repeat') || holdOf(job)) return null;
  const target = setNow(job, at.pass);
  // What another wrench or an adapter makes of the maker's figure stands beside it, not in its place.
  if (target !== at.pass.target) return at.pass.target;
  const unit = alsoIn ?? (target.unit === 'N·m' ? 'lbf·ft' : 'N·m');
  if (unit === target.unit) return null;
  const other = shownIn(target, unit);
  return other.ok ? other.value : null;
}

/** What is set on the wrench in hand; the maker's own figure where nothing else is known, or nothing can be set. */
function setNow(job: Job, pass: TorquePass): Printed {
  const setting = settingOf(job, pass);
  return setting.kind === 'set' ? setting.set : setting.target;
}

const figure = (f: Figure): Reply => reply('shown-value', { value: quantity(f) });

/** The few sentences worth teaching now, for "which words now?". */
export const taught = (examples: ReadonlyMap<string, string>): readonly string[] =>
  likeliest([...examples.keys()] as RuleName[])
    .slice(0, 5)
    .flatMap((rule) => examples.get(rule) ?? []);

/** Words worth showing first: what moves the work, then what answers a doubt, then the questions. */
function likeliest(rules: readonly RuleName[]): readonly RuleName[] {
  const rank = (r: RuleName): number =>
    FIRST.indexOf(r) >= 0 ? FIRST.indexOf(r) : 100 + (MANNERS[r] === 'harmless' ? 1 : 0);
  return [...new Set(rules)].filter((r) => !HIDDEN.has(r)).sort((a, b) => rank(a) - rank(b));
}

const FIRST: readonly RuleName[] = [
  'confirm',
  'cancel',
  'turned',
  'not-turned',
  'answer',
  'have-time',
  'no-time',
  'set-at',
  'all-marked',
  'bolt-done',
  'done',
  'so-far',
  'mark-at',
  'measured',
  'im-back',
  'end-closed',
  'tell-next',
  'tell-torque',
  'say-again',
  'take-back',
  'hold-on',
  'stop',
];

const HIDDEN: ReadonlySet<RuleName> = new Set(['slower', 'faster', 'terse', 'full', 'clicked', 'bolts-done']);

/**
 * Four places the hand learns: on, back, hold, tell. What the first two do follows the state; a place with nothing
 * to do stays empty so that the others never move. No button skips or confirms what its label does not say.
 */
function buttonsOf(rules: readonly RuleName[], words: ViewWords): readonly (BenchButton | null)[] {
  const pick = (wanted: readonly RuleName[]): BenchButton | null => {
    const rule = wanted.find((r) => rules.includes(r));
    return rule ? { command: rule, label: words.label(rule), slots: NEEDS_CURSOR.has(rule) ? 'cursor' : 'none' } : null;
  };
  return [
    pick(['confirm', 'not-turned', 'im-back', 'have-time', 'set-at', 'all-marked', 'bolt-done', 'done', 'close-job']),
    pick(['cancel', 'turned', ...(rules.includes('have-time') ? ['no-time' as const] : []), 'take-back']),
    pick(['hold-on', 'tell-place']),
    pick(['tell-next', 'say-again']),
  ];
}

const NEEDS_CURSOR: ReadonlySet<RuleName> = new Set(['bolt-done', 'set-at']);
