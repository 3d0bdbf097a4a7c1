import type { Offer, SlotDomain } from '../../language/grammar';
import type { Pass, Step } from '../../procedure/procedure';
import type { RuleName } from '../command';
import { passAt } from '../decide/at-pass';
import { mayRepeat } from '../decide/permission';
import { otherWrenches } from '../fitting-wrenches';
import type { Job } from '../job';
import { passStatesOf } from '../place';
import { type PassPart, passesOf } from '../plan';
import { floorDomain } from '../reading-units';
import { isTorque, settingOf, type TorquePass } from '../setting';
import { passState } from '../tightening';
import { isBeforeBoltOne, isTimeAsked } from '../time-gate';
import { checkedByOffer, integers, LENGTH, named, offer, options, range, TURNED } from './domains';
import { estimateOffers, pullOffers } from './estimates';

const PASS_ASKING: readonly RuleName[] = [
  'tell-torque',
  'tell-pass',
  'tell-lubrication',
  'tell-tool',
  'tell-side',
  'tell-time-needed',
];

export function passOffers(job: Job, step: Step, pass: Pass, part: PassPart): readonly Offer[] {
  const bolt = integers(pass.order);
  const asking =
    part === 'wait'
      ? [offer('tell-time-needed')]
      : [
          ...PASS_ASKING.map((r) => offer(r)),
          offer('tell-bolt', { bolt }),
          ...(hasLengths(job, step) ? [offer('tell-length', { bolt })] : []),
          ...(isTorque(pass) ? torqueAsking(part) : []),
          ...pullOffers(job, step, pass),
        ];
  return [
    ...asking,
    ...(isTimeAsked(job) ? [offer('have-time')] : []),
    ...(isBeforeBoltOne(job) ? [offer('no-time')] : []),
    ...inPart(job, step, pass, part, bolt),
  ];
}

function inPart(job: Job, step: Step, pass: Pass, part: PassPart, bolt: SlotDomain): readonly Offer[] {
  switch (part) {
    case 'set':
      return [
        ...settingOffers(job, pass),
        ...(isBeforeBoltOne(job) ? [] : [offer('not-sure', { bolt: anyBoltOf(step) })]),
        ...again(step),
        offer('next-pass-ready'),
        ...estimateOffers(),
      ];
    case 'mark':
      return [offer('all-marked'), ...again(step)];
    case 'work':
      return [...workOffers(job, step, pass, bolt), ...checkedByOffer(job)];
    case 'sort':
      return [...repeat(job), offer('go-ahead-anyway'), ...again(step), ...checkedByOffer(job)];
    case 'wait':
      return [offer('next-pass-ready'), ...again(step)];
  }
}

/** Before a pass begins, a doubt is about one that is over, whatever its fasteners were. */
const anyBoltOf = (step: Step): SlotDomain =>
  integers([...new Set(passesOf(step).flatMap((p) => p.order))].sort((a, b) => a - b));

const hasLengths = (job: Job, step: Step): boolean =>
  (step.kind === 'tighten' || step.kind === 'slacken') &&
  (job.plan.procedure.patterns.get(step.pattern)?.fasteners.some((f) => f.length !== undefined) ?? false);

const torqueAsking = (part: PassPart): readonly Offer[] => [
  offer('tell-in-unit', { unit: named(['N·m', 'lbf·ft']) }),
  offer('tell-setting', { length: LENGTH, ...angled(part === 'set') }),
];

/** Any number can be heard here, in any torque unit: a wrong one has to be understood to be refused. */
function settingOffers(job: Job, pass: Pass): readonly Offer[] {
  const torque = isTorque(pass);
  const setting: SlotDomain = {
    kind: 'reading',
    least: 1,
    most: 999,
    decimals: torque ? decimalsOf(job, pass) : 0,
    units: torque ? [...new Set([ownUnit(job, pass), 'N·m', 'lbf·ft', 'lbf·in', 'lbf'])] : ['deg'],
    unitNeeded: false,
  };
  return [offer('set-at', { setting }), ...(torque ? [...wrenchOffers(job, true), ...choiceOffers(job, pass)] : [])];
}

/** The unit of a number said alone: of what is to be set, which comes first. */
function ownUnit(job: Job, pass: TorquePass): string {
  const setting = settingOf(job, pass);
  return setting.kind === 'set' ? setting.set.unit : pass.target.unit;
}

function decimalsOf(job: Job, pass: TorquePass): number {
  const setting = settingOf(job, pass);
  const value = setting.kind === 'set' ? setting.set.value : pass.target.value;
  return Math.max(1, String(value).split('.')[1]?.length ?? 0);
}

/** Angles of an adapter are heard while the wrench is set: among bolts every number more is one more to mistake. */
const angled = (isSetting: boolean) => ({ degrees: isSetting ? TURNED : integers([]) });

const wrenchOffers = (job: Job, isSetting: boolean): readonly Offer[] => [
  offer('dropped-wrench'),
  job.adapter === null ? offer('adapter-on', { length: LENGTH, ...angled(isSetting) }) : offer('adapter-off'),
];

/** Another wrench, by its size or by its name where no two bear it. Before the bolts, and after a fall. */
function choiceOffers(job: Job, pass: TorquePass): readonly Offer[] {
  const others = otherWrenches(job, pass).map(({ wrench }) => wrench);
  if (others.length === 0) return job.owned.length > 0 ? [offer('tell-wrenches')] : [];
  const single = others.filter(({ id, say }) => !others.some((other) => other.id !== id && other.say === say));
  return [
    offer('tell-wrenches'),
    offer('use-size', { size: named(['small', 'large', 'other']) }),
    ...(single.length > 0
      ? [offer('use-wrench', { wrench: options(single.map(({ id, say }) => ({ id, say: [say] }))) })]
      : []),
  ];
}

/** Beginning the whole tightening again is possible at any point of it. */
const again = (step: Step): readonly Offer[] => (step.kind === 'tighten' ? [offer('slacken-all')] : []);

const repeat = (job: Job): readonly Offer[] => {
  const at = passAt(job);
  return at && mayRepeat(job, at) ? [offer('repeat-pass')] : [];
};

function workOffers(job: Job, step: Step, pass: Pass, bolt: SlotDomain): readonly Offer[] {
  const states = [...passState(passStatesOf(job, step.id), pass.id).bolts.values()];
  const held = states.some((b) => b.kind === 'held');
  const unknown = states.some((b) => b.kind === 'unknown');
  return [
    offer('bolt-done', { bolt }),
    offer('bolts-done', { from: bolt, to: bolt }),
    ...doubt(pass),
    ...again(step),
    ...(isTorque(pass) ? [...torqueTalk(), ...wrenchOffers(job, false), ...afterAFall(job, pass), ...repeat(job)] : []),
    ...(pass.kind === 'angle' ? angleTalk(pass, unknown) : []),
    ...(held ? [offer('go-ahead-anyway')] : []),
    ...(step.kind === 'tighten' ? [offer('bolt-replaced', { bolt })] : []),
  ];
}

const afterAFall = (job: Job, pass: TorquePass): readonly Offer[] =>
  job.dropped.has(pass.tool ?? '') ? choiceOffers(job, pass) : [];

const torqueTalk = (): readonly Offer[] =>
  (['clicked', 'clicked-early', 'pulled-through', 'clicked-twice', 'felt-soft'] as const).map((r) => offer(r));

const angleTalk = (pass: Pass & { readonly kind: 'angle' }, unknown: boolean): readonly Offer[] => [
  offer('so-far', { degrees: integers(swings(pass)) }),
  offer('past-by', { degrees: integers(range(1, Math.max(45, pass.window.most - pass.degrees), 1)) }),
  offer('went-past'),
  offer('felt-soft'),
  offer('tell-angle-left'),
  ...floorOffers(pass),
  ...(unknown ? [offer('mark-at', { clock: integers(range(1, 12, 1)) }), offer('no-mark')] : []),
];

/** The torque at the end of a turn, where the pass asks for it. */
export function floorOffers(pass: Pass): readonly Offer[] {
  if (pass.kind !== 'angle' || !pass.floor) return [];
  const reading = floorDomain(pass.floor);
  const place = options(pass.order.map((bolt) => ({ id: String(bolt), say: [String(bolt)] })));
  // A bolt is a number: behind a reading it would be one more number, so it is named before it only.
  return [offer('measured', { reading }), offer('measured-at', { place, reading, gauged: integers([]) })];
}

/** Swings are told to five degrees, or to one where the window is too narrow for that. */
function swings({ window }: Pass & { readonly kind: 'angle' }): readonly number[] {
  const step = window.most - window.least < 10 ? 1 : 5;
  return range(step, 360, step);
}

export const doubt = (pass: Pass): readonly Offer[] =>
  pass.kind === 'wait'
    ? []
    : [offer('snapped'), offer('not-sure', { bolt: integers(pass.order) }), offer('out-of-order')];
