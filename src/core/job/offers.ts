import type { Offer, SlotDomain } from '../language/grammar';
import type { Pass, Step } from '../procedure/procedure';
import { MANNERS, type RuleName } from './command';
import type { Job } from './job';
import { nextReading, passStatesOf, placeOf } from './place';
import { passIn, stepIn } from './plan';
import { passState } from './tightening';

/** Everything that makes sense to say in this job now. The recogniser can hear nothing else. */
export function offersOf(job: Job): readonly Offer[] {
  if (job.pending) return [...ALWAYS.map((r) => offer(r)), ...pendingOffers(job)];
  const place = placeOf(job);
  switch (place.kind) {
    case 'step':
      return [...common(job), ...stepOffers(job, stepIn(job.plan, place.step).step)];
    case 'pass': {
      const { step } = stepIn(job.plan, place.step);
      return [...common(job), ...passOffers(job, step, passIn(job.plan, place.step, place.pass), place.part)];
    }
    case 'paused':
      return [...ALWAYS, 'im-back' as const, ...ASKING].map((r) => offer(r));
    case 'closing':
      return [...common(job), offer('close-job')];
    case 'closed':
      return ALWAYS.map((r) => offer(r));
  }
}

const offer = (rule: RuleName, slots: Readonly<Record<string, SlotDomain>> = {}): Offer => ({
  rule,
  manner: MANNERS[rule],
  slots,
});

const ALWAYS: readonly RuleName[] = ['stop', 'say-again', 'tell-words', 'ears-off', 'ears-on'];
const ASKING: readonly RuleName[] = ['tell-place', 'tell-loose-ends', 'tell-timers', 'tell-brief'];
const WORKING: readonly RuleName[] = [
  'tell-next',
  'tell-remaining',
  'tell-caution',
  'take-back',
  'hold-on',
  'knocking-off',
  'dropped-one',
  'take-note',
  'take-picture',
  'terse',
  'full',
  'hand-over',
];

function common(job: Job): readonly Offer[] {
  return [
    ...[...ALWAYS, ...ASKING, ...WORKING].map((r) => offer(r)),
    ...endOffers(job),
    ...([...job.ends.values()].some((e) => e.why === 'dropped') ? [offer('found-it')] : []),
  ];
}

/** Things a person fitted back out of turn, and things signed off with a reason. */
function endOffers(job: Job): readonly Offer[] {
  const ends = [...job.ends].filter(([, e]) => e.why !== 'dropped');
  if (ends.length === 0) return [];
  const end = options(ends.map(([id, e]) => ({ id, say: [e.what] })));
  return [offer('end-closed', { end }), offer('sign-off', { end, reason: named(REASONS) })];
}

/** Reasons a debt may be signed off with, by id; the language gives their words. */
export const REASONS = ['not-fitted-here', 'waiting-for-a-part', 'tested-another-way', 'owner-decided'] as const;

const options = (all: readonly { readonly id: string; readonly say: readonly string[] }[]): SlotDomain => ({
  kind: 'options',
  options: all,
});

const named = (ids: readonly string[]): SlotDomain => ({ kind: 'named', ids });

const integers = (values: readonly number[]): SlotDomain => ({ kind: 'integers', values });

function pendingOffers(job: Job): readonly Offer[] {
  switch (job.pending?.kind) {
    case 'turned-or-not':
      return [offer('turned'), offer('not-turned')];
    case 'which-bolt': {
      const { step } = stepIn(job.plan, job.pending.step);
      const pass = passIn(job.plan, job.pending.step, job.pending.pass);
      return [
        offer('bolt-done', { bolt: integers(pass.order) }),
        offer('cancel'),
        ...doubt(step, pass),
        offer('hold-on'),
      ];
    }
    default:
      return [offer('confirm'), offer('cancel')];
  }
}

function stepOffers(job: Job, step: Step): readonly Offer[] {
  const skip = mayBeSkipped(step) ? [offer('skip-step')] : [];
  if (step.question)
    return [
      offer('answer', { answer: options(step.question.answers.map((a) => ({ id: a.id, say: a.say }))) }),
      ...skip,
    ];
  switch (step.kind) {
    case 'measure': {
      const next = nextReading(job, step.id);
      if (!next) return [offer('done'), offer('tell-limit'), ...skip];
      const reading: SlotDomain = {
        kind: 'reading',
        least: next.least,
        most: next.most,
        decimals: next.decimals,
        units: [next.unit],
        unitNeeded: false,
      };
      const place = options(step.readings.map((r) => ({ id: r.id, say: [r.say] })));
      return [offer('measured', { reading }), offer('measured-at', { place, reading }), offer('tell-limit'), ...skip];
    }
    case 'wait':
      return [offer('done')];
    case 'do':
    case 'remove':
    case 'refit':
    case 'hold':
    case 'fill':
    case 'tighten':
    case 'slacken':
      return [offer('done'), ...skip];
  }
}

/** Only plain work may be put off. A hold point, a tightening or a wait may not. */
export const mayBeSkipped = (step: Step): boolean =>
  !step.question && (step.kind === 'do' || step.kind === 'remove' || step.kind === 'refit' || step.kind === 'fill');

const PASS_ASKING: readonly RuleName[] = [
  'tell-torque',
  'tell-pass',
  'tell-lubrication',
  'tell-tool',
  'tell-side',
  'tell-time-needed',
];

function passOffers(job: Job, step: Step, pass: Pass, part: string): readonly Offer[] {
  const bolt = integers(pass.order);
  const asking = [...PASS_ASKING.map((r) => offer(r)), offer('tell-bolt', { bolt }), ...inUnit(pass)];
  switch (part) {
    case 'set': {
      const value =
        pass.kind === 'torque' || pass.kind === 'repeat' ? pass.target.value : pass.kind === 'angle' ? pass.degrees : 0;
      const unit = pass.kind === 'torque' || pass.kind === 'repeat' ? [pass.target.unit] : [];
      const setting: SlotDomain = {
        kind: 'reading',
        least: 1,
        most: Math.max(999, value),
        decimals: 1,
        units: unit,
        unitNeeded: false,
      };
      return [...asking, offer('set-at', { setting }), offer('dropped-wrench')];
    }
    case 'mark':
      return [...asking, offer('all-marked')];
    case 'sort':
      return [...asking, offer('repeat-pass'), offer('go-ahead-anyway'), offer('slacken-all'), ...doubt(step, pass)];
    case 'wait':
      return [offer('done'), offer('tell-time-needed')];
    default:
      return [...asking, ...workOffers(job, step, pass, bolt)];
  }
}

function workOffers(job: Job, step: Step, pass: Pass, bolt: SlotDomain): readonly Offer[] {
  const state = passState(passStatesOf(job, step.id), pass.id);
  const unknown = [...state.bolts.values()].some((b) => b.kind === 'unknown');
  const held = [...state.bolts.values()].some((b) => b.kind === 'held');
  return [
    offer('done'),
    offer('bolt-done', { bolt }),
    offer('bolts-done', { from: bolt, to: bolt }),
    ...doubt(step, pass),
    offer('dropped-wrench'),
    ...(pass.kind === 'torque' || pass.kind === 'repeat'
      ? [
          offer('clicked'),
          offer('clicked-early'),
          offer('pulled-through'),
          offer('clicked-twice'),
          offer('repeat-pass'),
        ]
      : []),
    ...(pass.kind === 'angle'
      ? [offer('so-far', { degrees: integers(range(5, 360, 5)) }), offer('went-past'), offer('tell-angle-left')]
      : []),
    ...(unknown && pass.kind === 'angle'
      ? [offer('mark-at', { clock: integers(range(1, 12, 1)) }), offer('no-mark')]
      : []),
    ...(held || unknown ? [offer('bolt-replaced', { bolt }), offer('slacken-all')] : []),
  ];
}

const doubt = (_step: Step, pass: Pass): readonly Offer[] =>
  pass.kind === 'wait'
    ? []
    : [offer('felt-soft'), offer('snapped'), offer('not-sure', { bolt: integers(pass.order) }), offer('out-of-order')];

const inUnit = (pass: Pass): readonly Offer[] =>
  pass.kind === 'torque' || pass.kind === 'repeat'
    ? [
        offer('tell-in-unit', {
          unit: named(['N·m', 'lbf·ft']),
        }),
      ]
    : [];

const range = (from: number, to: number, step: number): readonly number[] =>
  Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, i) => from + i * step);
