import { duration, quantity, type Reply, reply, text } from '../../phrasing/reply';
import type { Step } from '../../procedure/procedure';
import type { Moment } from '../entry';
import type { Job } from '../job';
import { blockersOf } from '../milestone';
import { nextReading } from '../place';
import { stepIn } from '../plan';
import { timeLeft } from '../timer';
import { openEnds } from './ends';

/** A step on arriving at it. What is in its way is said instead of the action: nobody is told to turn what must not turn. */
export function announceStep(job: Job, step: Step, now: Moment): readonly Reply[] {
  const blocked = blockersOf(job, step);
  if (blocked.length > 0) return [...phaseBegins(job, step), reply('milestone-blocked', { ends: openEnds(blocked) })];
  if (stepIn(job.plan, step.id).passes.length > 0) return question(step);
  const reading = nextReading(job, step.id);
  const goesOn = step.kind === 'measure' && job.readings.has(step.id);
  return [
    ...phaseBegins(job, step),
    ...(job.steps.get(step.id) === 'skipped' ? [reply('now-due', {})] : []),
    ...(goesOn ? [] : [...hazards(step), reply('step', { text: text(step.say) })]),
    ...(reading ? [reply('next-reading', { reading: text(reading.say) })] : question(step)),
    ...(step.kind === 'fill' ? [reply('fill-amount', { what: text(step.what), amount: quantity(step.amount) })] : []),
    ...(step.kind === 'wait' ? [timerReply(job, step.timer, now)] : []),
  ];
}

const question = (step: Step): readonly Reply[] =>
  step.question ? [reply('ask-question', { text: text(step.question.ask) })] : [];

/** Warnings, cautions and notes of a step, in that order (ANSI Z535 words), before anything is asked to be done. */
export const hazards = (step: Step): readonly Reply[] => [
  ...step.warnings.map((w) => reply('warning', { text: text(w) })),
  ...step.cautions.map((c) => reply('caution', { text: text(c) })),
  ...step.notes.map((n) => reply('note', { text: text(n) })),
];

export function phaseBegins(job: Job, step: Step): readonly Reply[] {
  const { phase } = stepIn(job.plan, step.id);
  return phase.steps[0]?.id === step.id ? [reply('phase-begins', { phase: text(phase.say) })] : [];
}

export function timerReply(job: Job, id: string, now: Moment): Reply {
  const timer = job.timers.get(id);
  const say = text(timer?.say ?? job.plan.procedure.timers.get(id)?.say ?? id);
  const left = timer ? timeLeft(timer, now) : (job.plan.procedure.timers.get(id)?.minutes ?? 0) * 60_000;
  return left > 0 ? reply('wait-for', { timer: say, left: duration(left) }) : reply('timer-over', { timer: say });
}
