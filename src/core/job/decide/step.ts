import { duration, reply, text } from '../../phrasing/reply';
import type { Step } from '../../procedure/procedure';
import { openEnds } from '../announce/ends';
import { type Command, optionIn } from '../command';
import { type Decision, does, refused } from '../decision';
import type { EntryBody, Moment } from '../entry';
import type { Job } from '../job';
import { blockersOf } from '../milestone';
import { nextReading, workPlace } from '../place';
import { passIn, stepIn } from '../plan';
import { timeLeft } from '../timer';
import { waitsOf } from '../waits';

export function stepAt(job: Job): Step | undefined {
  const place = workPlace(job);
  return place.kind === 'step' ? stepIn(job.plan, place.step).step : undefined;
}

/** "Done" for a plain step or a finished wait. A hold point asks for its read-back; open debts and running clocks refuse. */
export function done(job: Job, now: Moment): Decision {
  const place = workPlace(job);
  if (place.kind === 'pass' && place.part === 'wait') return passWaited(job, place.step, place.pass, now);
  const step = stepAt(job);
  if (!step) return refused(reply('not-here', {}));
  const reading = nextReading(job, step.id);
  if (reading) return refused(reply('readings-left', { reading: text(reading.say) }));
  if (step.question) return refused(reply('read-back-first', { question: text(step.question.ask) }));
  return finish(job, step, now, [], [reply('step-done', {})]);
}

/** Ends a step unless something it depends on is still open. */
export function finish(
  job: Job,
  step: Step,
  now: Moment,
  before: readonly EntryBody[],
  replies: Decision['replies'],
): Decision {
  const blocked = blockersOf(job, step);
  if (blocked.length > 0) return refused(reply('milestone-blocked', { ends: openEnds(blocked) }));
  for (const id of waitsOf(step)) {
    const timer = job.timers.get(id);
    const left = timer ? timeLeft(timer, now) : (job.plan.procedure.timers.get(id)?.minutes ?? 0) * 60_000;
    const say = text(timer?.say ?? job.plan.procedure.timers.get(id)?.say ?? id);
    if (left > 0) return refused(reply('timer-runs', { timer: say, left: duration(left) }));
  }
  return does([...before, { kind: 'step-done', step: step.id }], replies);
}

function passWaited(job: Job, stepId: string, passId: string, now: Moment): Decision {
  const pass = passIn(job.plan, stepId, passId);
  if (pass.kind !== 'wait') return refused(reply('not-here', {}));
  const timer = job.timers.get(pass.timer);
  const left = timer ? timeLeft(timer, now) : 1;
  if (left > 0) return refused(reply('timer-runs', { timer: text(timer?.say ?? pass.timer), left: duration(left) }));
  return does([{ kind: 'pass-waited', step: stepId, pass: passId }], [reply('step-done', {})]);
}

/** A read-back or a finding. A wrong answer is written down and answered; only a right one goes on. */
export function answer(job: Job, c: Command, now: Moment): Decision {
  const step = stepAt(job);
  const id = optionIn(c, 'answer');
  const given = step?.question?.answers.find((a) => a.id === id);
  if (!step?.question || !given) return refused(reply('not-here', {}));
  const reading = nextReading(job, step.id);
  if (reading) return refused(reply('readings-left', { reading: text(reading.say) }));
  const say = text(given.say[0] ?? given.id);
  const entry: EntryBody = { kind: 'question-answered', step: step.id, answer: given.id, right: given.right };
  if (!given.right) return does([entry], [reply('answer-wrong', { answer: say, advice: text(step.question.ifWrong) })]);
  return finish(job, step, now, [entry], [reply('answer-taken', { answer: say })]);
}

/** Starts the wait of this place by hand; a wait already running is only told. */
export function startTimer(job: Job, now: Moment): Decision {
  const step = stepAt(job);
  const id = step ? waitsOf(step).find((t) => !job.timers.has(t)) : undefined;
  const spec = id === undefined ? undefined : job.plan.procedure.timers.get(id);
  if (id === undefined || !spec) {
    const [running] = [...job.timers.values()].filter((t) => timeLeft(t, now) > 0);
    return refused(
      running
        ? reply('timer-running', { timer: text(running.say), left: duration(timeLeft(running, now)) })
        : reply('no-timers', {}),
    );
  }
  const ms = spec.minutes * 60_000;
  return does(
    [{ kind: 'timer-started', timer: id, ms }],
    [reply('timer-running', { timer: text(spec.say), left: duration(ms) })],
  );
}
