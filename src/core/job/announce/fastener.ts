import { bolts, clock, count, degrees, quantity, type Reply, reply, text } from '../../phrasing/reply';
import type { Pass, Pattern, Step } from '../../procedure/procedure';
import type { Job } from '../job';
import { clockOf, markDegrees } from '../marks';
import { passStatesOf } from '../place';
import { stepIn } from '../plan';
import { boltState, expectedBolt, passState } from '../tightening';

export function patternOf(job: Job, step: Step): Pattern | undefined {
  return step.kind === 'tighten' || step.kind === 'slacken' ? job.plan.procedure.patterns.get(step.pattern) : undefined;
}

export const whereIs = (job: Job, step: Step, bolt: number): string =>
  patternOf(job, step)?.fasteners.find((f) => f.number === bolt)?.say ?? '';

const rowOf = (job: Job, step: Step, bolt: number): string =>
  patternOf(job, step)?.fasteners.find((f) => f.number === bolt)?.row ?? '';

/** The fastener to do next, in full: number, landmark and value. One in doubt or held is never told to be done. */
export function nextBolt(job: Job, step: Step, pass: Pass): readonly Reply[] {
  const state = passState(passStatesOf(job, step.id), pass.id);
  const bolt = expectedBolt(pass, state);
  if (bolt === undefined) return [];
  const is = boltState(state, bolt);
  switch (is.kind) {
    case 'unknown':
      return [proofWanted(job, step, pass, bolt)];
    case 'held':
      return [reply('bolt-held', { bolt: count(bolt) })];
    case 'partial':
      return pass.kind === 'angle' ? [partly(pass, bolt, is.degrees)] : inFull(job, step, pass, bolt);
    case 'done':
      // Turned out of order, its torque not read: to be told its degrees would be to be told to turn it again.
      return pass.kind === 'angle' && pass.floor
        ? [reply('floor-first', { bolt: count(bolt), floor: quantity(pass.floor) })]
        : [];
    case 'open':
      return inFull(job, step, pass, bolt);
  }
}

export const partly = (pass: Pass & { readonly kind: 'angle' }, bolt: number, turned: number): Reply =>
  reply('bolt-partly', { bolt: count(bolt), degrees: degrees(turned), left: degrees(pass.degrees - turned) });

/** Number, landmark and value; number and value alone where the person asked for numbers only. */
function inFull(job: Job, step: Step, pass: Pass, bolt: number): readonly Reply[] {
  const where = text(job.terse ? '' : whereIs(job, step, bolt));
  switch (pass.kind) {
    case 'torque':
    case 'repeat':
      return [reply('next-bolt', { bolt: count(bolt), where, value: quantity(pass.target) })];
    case 'angle':
      return [reply('next-bolt-angle', { bolt: count(bolt), where, degrees: degrees(pass.degrees) })];
    case 'slacken':
      return [reply('next-bolt-slacken', { bolt: count(bolt), where })];
    case 'wait':
      return [];
  }
}

/** What proves a bolt in doubt: for an angle where its mark points now, for a torque nothing but the pass again. */
export function proofWanted(job: Job, step: Step, pass: Pass, bolt: number): Reply {
  if (pass.kind !== 'angle') return reply('unknown-torque', { bolt: count(bolt) });
  const { passes } = stepIn(job.plan, step.id);
  const { after } = markDegrees(passes, passes.indexOf(pass));
  return reply('where-is-mark', { bolt: count(bolt), clock: clock(clockOf(after)) });
}

/** Confirmed in full this many times in a row before the echo shrinks to the next number. */
const FULL_ECHOES = 3;

/** The short echo after a fastener; the landmark again whenever the row changes or the rhythm was broken. */
export function echoBolt(job: Job, step: Step, pass: Pass, doneBolt: number): readonly Reply[] {
  const state = passState(passStatesOf(job, step.id), pass.id);
  const next = expectedBolt(pass, state);
  const done = reply('bolt-done', { bolt: count(doneBolt) });
  if (next === undefined) return [done];
  if (boltState(state, next).kind !== 'open') return [done, ...nextBolt(job, step, pass)];
  const sameRow = rowOf(job, step, next) === rowOf(job, step, doneBolt);
  const inRhythm = job.streak > FULL_ECHOES;
  if (job.terse || (inRhythm && sameRow)) return [reply('next-number', { next: count(next) })];
  const where = text(whereIs(job, step, next));
  if (inRhythm) return [reply('next-where', { next: count(next), where })];
  return [reply('bolt-then-next', { bolt: count(doneBolt), next: count(next), where })];
}

export function orderToSettle(job: Job, step: Step, pass: Pass): Reply {
  const rule = pass.recovery['out-of-order'];
  if (rule) return reply('order-to-settle-rule', { rule: text(rule.say) });
  const state = passState(passStatesOf(job, step.id), pass.id);
  const astray = pass.order.filter((b) => {
    const is = boltState(state, b);
    return is.kind === 'done' && !is.inOrder;
  });
  return reply('order-to-settle', { bolts: bolts(astray) });
}
