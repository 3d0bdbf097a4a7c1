import { bolts, count, degrees, duration, quantity, type Reply, replies, reply, text } from '../phrasing/reply';
import type { Pass, Pattern, Step } from '../procedure/procedure';
import type { Moment } from './entry';
import type { Job, LooseEnd } from './job';
import { nextReading, passStatesOf, placeOf } from './place';
import { type Place, passIn, stepIn } from './plan';
import { boltsLeft, expectedBolt, passState } from './tightening';
import { timeLeft } from './timer';

/** What is said on arriving at the place the job is at: hazards first, then the action, then the value. */
export function announce(job: Job, now: Moment): readonly Reply[] {
  const place = placeOf(job);
  switch (place.kind) {
    case 'step':
      return announceStep(job, stepIn(job.plan, place.step).step, now);
    case 'pass':
      return announcePass(job, place, now);
    case 'paused':
      return [reply('paused', {})];
    case 'closing':
      return job.ends.size > 0
        ? [reply('closing-open', { ends: openEnds(job.ends.values()) })]
        : [reply('closing-ready', {})];
    case 'closed':
      return [reply('job-closed', {})];
  }
}

/** Loose ends by name; something dropped has no name of its own. */
export const openEnds = (ends: Iterable<LooseEnd>) =>
  replies(
    [...ends].map((e) => (e.why === 'dropped' ? reply('end-dropped', {}) : reply('end-named', { what: text(e.what) }))),
  );

/** Warnings, cautions and notes of a step, in that order (ANSI Z535 words), before anything is asked to be done. */
export const hazards = (step: Step): readonly Reply[] => [
  ...step.warnings.map((w) => reply('warning', { text: text(w) })),
  ...step.cautions.map((c) => reply('caution', { text: text(c) })),
  ...step.notes.map((n) => reply('note', { text: text(n) })),
];

function announceStep(job: Job, step: Step, now: Moment): readonly Reply[] {
  const reading = nextReading(job, step.id);
  return [
    ...phaseBegins(job, step),
    ...(reading && job.readings.has(step.id) ? [] : hazards(step)),
    reply('step', { text: text(step.say) }),
    ...(step.question ? [reply('ask-question', { text: text(step.question.ask) })] : []),
    ...(reading ? [reply('next-reading', { reading: text(reading.say) })] : []),
    ...(step.kind === 'fill' ? [reply('fill-amount', { what: text(step.what), amount: quantity(step.amount) })] : []),
    ...(step.kind === 'wait' ? [timerReply(job, step.timer, now)] : []),
  ];
}

function phaseBegins(job: Job, step: Step): readonly Reply[] {
  const { phase } = stepIn(job.plan, step.id);
  return phase.steps[0]?.id === step.id ? [reply('phase-begins', { phase: text(phase.say) })] : [];
}

export function timerReply(job: Job, id: string, now: Moment): Reply {
  const timer = job.timers.get(id);
  const say = text(timer?.say ?? job.plan.procedure.timers.get(id)?.say ?? id);
  const left = timer ? timeLeft(timer, now) : (job.plan.procedure.timers.get(id)?.minutes ?? 0) * 60_000;
  return left > 0 ? reply('wait-for', { timer: say, left: duration(left) }) : reply('timer-over', { timer: say });
}

function announcePass(job: Job, place: Place & { readonly kind: 'pass' }, now: Moment): readonly Reply[] {
  const { step, passes } = stepIn(job.plan, place.step);
  const pass = passIn(job.plan, place.step, place.pass);
  const first = passes[0]?.id === pass.id;
  const begins = [
    ...(first ? [...phaseBegins(job, step), ...hazards(step), reply('step', { text: text(step.say) })] : []),
    reply('pass-begins', {
      pass: text(pass.say),
      number: count(passes.indexOf(pass) + 1),
      total: count(passes.length),
      bolts: count(pass.order.length),
    }),
  ];
  switch (place.part) {
    case 'set':
      return [...begins, setWrench(job, pass)];
    case 'mark':
      return [reply('mark-heads', {})];
    case 'work': {
      const starting = boltsLeft(pass, passState(passStatesOf(job, step.id), pass.id)) === pass.order.length;
      return [
        ...(starting && pass.kind === 'slacken'
          ? [...begins, reply('slacken-now', { degrees: degrees(pass.degrees) })]
          : []),
        ...nextBolt(job, step, pass),
      ];
    }
    case 'sort':
      return [orderToSettle(job, step, pass)];
    case 'wait':
      return pass.kind === 'wait' ? [...begins, timerReply(job, pass.timer, now)] : begins;
  }
}

/** The tool and the number to set, which is then awaited back. */
export function setWrench(job: Job, pass: Pass): Reply {
  const tool = text(pass.tool ? (job.plan.procedure.tools.get(pass.tool)?.say ?? pass.tool) : '');
  switch (pass.kind) {
    case 'torque':
    case 'repeat':
      return pass.lubrication
        ? reply('set-wrench-lubricated', { tool, setting: quantity(pass.target), lubrication: text(pass.lubrication) })
        : reply('set-wrench', { tool, setting: quantity(pass.target) });
    case 'angle':
      return reply('set-angle', { tool, degrees: degrees(pass.degrees) });
    case 'slacken':
      return reply('slacken-now', { degrees: degrees(pass.degrees) });
    case 'wait':
      return reply('no-tool-here', {});
  }
}

export function patternOf(job: Job, step: Step): Pattern | undefined {
  return step.kind === 'tighten' || step.kind === 'slacken' ? job.plan.procedure.patterns.get(step.pattern) : undefined;
}

export const whereIs = (job: Job, step: Step, bolt: number): string =>
  patternOf(job, step)?.fasteners.find((f) => f.number === bolt)?.say ?? '';

const rowOf = (job: Job, step: Step, bolt: number): string =>
  patternOf(job, step)?.fasteners.find((f) => f.number === bolt)?.row ?? '';

/** The fastener to do next, in full: number, landmark and value. */
export function nextBolt(job: Job, step: Step, pass: Pass): readonly Reply[] {
  const bolt = expectedBolt(pass, passState(passStatesOf(job, step.id), pass.id));
  if (bolt === undefined) return [];
  const where = text(whereIs(job, step, bolt));
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

/**
 * The short echo after a fastener. In full until three have been confirmed in a row, then a tick and the number;
 * the landmark again whenever the row changes.
 */
export function echoBolt(job: Job, step: Step, pass: Pass, doneBolt: number): readonly Reply[] {
  const next = expectedBolt(pass, passState(passStatesOf(job, step.id), pass.id));
  if (next === undefined) return [reply('bolt-done', { bolt: count(doneBolt) })];
  const sameRow = rowOf(job, step, next) === rowOf(job, step, doneBolt);
  if (job.streak > 3 && sameRow) return [reply('next-number', { next: count(next) })];
  return [reply('bolt-then-next', { bolt: count(doneBolt), next: count(next), where: text(whereIs(job, step, next)) })];
}

export function orderToSettle(job: Job, step: Step, pass: Pass): Reply {
  const rule = pass.recovery['out-of-order'];
  if (rule) return reply('order-to-settle-rule', { rule: text(rule.say) });
  const state = passState(passStatesOf(job, step.id), pass.id);
  const astray = pass.order.filter((b) => {
    const s = state.bolts.get(b);
    return s?.kind === 'done' && !s.inOrder;
  });
  return reply('order-to-settle', { bolts: bolts(astray) });
}
