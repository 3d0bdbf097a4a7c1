import { clock, count, degrees, duration, quantity, type Reply, reply, text } from '../../phrasing/reply';
import type { Pass, Step } from '../../procedure/procedure';
import type { Moment } from '../entry';
import { howLong } from '../how-long';
import type { Job } from '../job';
import { clockOf, markDegrees } from '../marks';
import { passStatesOf } from '../place';
import { type Place, passIn, stepIn } from '../plan';
import { boltsLeft, passState } from '../tightening';
import { isTimeAsked } from '../time-gate';
import { nextBolt, orderToSettle, patternOf } from './fastener';
import { setWrench } from './setting';
import { hazards, phaseBegins, timerReply } from './step';

type AtPass = Place & { readonly kind: 'pass' };

/** While the time for it is asked nothing more is told: what to set comes with the answer. */
export function announcePass(job: Job, place: AtPass, now: Moment): readonly Reply[] {
  const { step, passes } = stepIn(job.plan, place.step);
  const opening = passes[0]?.id === place.pass && !job.begun.has(step.id) ? tighteningBegins(job, step, passes) : [];
  return isTimeAsked(job) ? opening : passAnnounced(job, place, now, opening);
}

/** A pass after what opens the whole tightening, if that is still to be said. */
export function passAnnounced(job: Job, place: AtPass, now: Moment, opening: readonly Reply[]): readonly Reply[] {
  const { step, passes } = stepIn(job.plan, place.step);
  const pass = passIn(job.plan, place.step, place.pass);
  const begins = [
    ...opening,
    reply('pass-begins', {
      pass: text(pass.say),
      number: count(passes.indexOf(pass) + 1),
      total: count(passes.length),
      bolts: count(pass.order.length),
    }),
  ];
  const untouched = boltsLeft(pass, passState(passStatesOf(job, step.id), pass.id)) === pass.order.length;
  switch (place.part) {
    case 'set':
      return [...(untouched ? begins : []), ...setWrench(job, pass, now)];
    case 'mark':
      return [reply('mark-heads', {})];
    case 'work':
      return [
        ...(untouched && pass.kind === 'slacken' ? [...begins, ...setWrench(job, pass, now)] : []),
        ...(untouched && pass.kind === 'angle' ? [coaching(passes, pass), ...floorAsked(pass)] : []),
        ...nextBolt(job, step, pass),
      ];
    case 'sort':
      return [orderToSettle(job, step, pass)];
    case 'wait':
      return pass.kind === 'wait' ? [...begins, timerReply(job, pass.timer, now)] : begins;
  }
}

/** Before the first fastener: hazards, the way the numbers are to be looked at, and whether there is time to finish. */
function tighteningBegins(job: Job, step: Step, passes: readonly Pass[]): readonly Reply[] {
  const view = patternOf(job, step)?.viewedFrom;
  return [
    ...phaseBegins(job, step),
    ...hazards(step),
    reply('step', { text: text(step.say) }),
    ...(view ? [reply('seen-from', { view: text(view) })] : []),
    ...(passes.some((p) => p.generated) ? [reply('order-generated', {})] : []),
    ...(isTimeAsked(job)
      ? [
          reply('time-asked', {
            bolts: count(passes.flatMap((p) => p.order).length),
            passes: count(passes.length),
            time: duration(howLong(job.plan.procedure, passes, passStatesOf(job, step.id))),
          }),
        ]
      : []),
  ];
}

const floorAsked = ({ floor }: Pass & { readonly kind: 'angle' }): readonly Reply[] =>
  floor ? [reply('floor-asked', { floor: quantity(floor) })] : [];

/** How an angle is given: in how many swings, and where the mark stands at the end. */
function coaching(passes: readonly Pass[], pass: Pass & { readonly kind: 'angle' }): Reply {
  const { after } = markDegrees(passes, passes.indexOf(pass));
  return reply('angle-swings', {
    swings: count(pass.swings),
    degrees: degrees(pass.degrees / pass.swings),
    clock: clock(clockOf(after)),
  });
}
