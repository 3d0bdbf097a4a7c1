import { digits, duration, quantity, reply, text } from '../../phrasing/reply';
import { MILESTONES, type ReadingSpec, type Step } from '../../procedure/procedure';
import { openEnds } from '../announce';
import { type Command, optionIn, readingIn } from '../command';
import { asks, type Decision, does, refused } from '../decision';
import type { EntryBody, Moment } from '../entry';
import type { Job, LooseEnd } from '../job';
import { limitVerdict } from '../limit';
import { nextReading, workPlace } from '../place';
import { passIn, stepIn } from '../plan';
import { timeLeft } from '../timer';
import { waitsOf } from './settle';

function stepAt(job: Job): Step | undefined {
  const place = workPlace(job);
  return place.kind === 'step' ? stepIn(job.plan, place.step).step : undefined;
}

/** "Done" for a plain step or a finished wait. A hold point asks for its read-back; open debts and running clocks refuse. */
export function done(job: Job, now: Moment): Decision {
  const place = workPlace(job);
  if (place.kind === 'pass' && place.part === 'wait') return passWaited(job, place.step, place.pass, now);
  const step = stepAt(job);
  if (!step) return refused(reply('not-here', {}));
  if (step.question) return refused(reply('read-back-first', { question: text(step.question.ask) }));
  const reading = nextReading(job, step.id);
  if (reading) return refused(reply('readings-left', { reading: text(reading.say) }));
  return finish(job, step, now, [], [reply('step-done', {})]);
}

/** Ends a step unless something it depends on is still open. */
function finish(
  job: Job,
  step: Step,
  now: Moment,
  before: readonly EntryBody[],
  replies: Decision['replies'],
): Decision {
  const blocked = blockers(job, step);
  if (blocked.length > 0) return refused(reply('milestone-blocked', { ends: openEnds(blocked) }));
  for (const id of waitsOf(step)) {
    const timer = job.timers.get(id);
    const left = timer ? timeLeft(timer, now) : (job.plan.procedure.timers.get(id)?.minutes ?? 0) * 60_000;
    const say = text(timer?.say ?? job.plan.procedure.timers.get(id)?.say ?? id);
    if (left > 0) return refused(reply('timer-runs', { timer: say, left: duration(left) }));
  }
  return does([...before, { kind: 'step-done', step: step.id }], replies);
}

/** What is still open and blocks the milestone this step passes, its own closings aside. */
export function blockers(job: Job, step: Step): readonly LooseEnd[] {
  const milestone = step.milestone;
  if (!milestone) return [];
  const reached = MILESTONES.indexOf(milestone);
  return [...job.ends]
    .filter(([id, e]) => !step.closes.includes(id) && MILESTONES.indexOf(e.blocks) <= reached)
    .map(([, e]) => e);
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
  const say = text(given.say[0] ?? given.id);
  const entry: EntryBody = { kind: 'question-answered', step: step.id, answer: given.id, right: given.right };
  if (!given.right) return does([entry], [reply('answer-wrong', { answer: say, advice: text(step.question.ifWrong) })]);
  return finish(job, step, now, [entry], [reply('answer-taken', { answer: say })]);
}

export function measured(job: Job, c: Command, now: Moment): Decision {
  const step = stepAt(job);
  const spec = step ? nextReading(job, step.id) : undefined;
  if (step?.kind !== 'measure' || !spec) return refused(reply('not-here', {}));
  return takeReading(job, step, spec, c, now);
}

export function measuredAt(job: Job, c: Command, now: Moment): Decision {
  const step = stepAt(job);
  const id = optionIn(c, 'place');
  const spec = step?.kind === 'measure' ? step.readings.find((r) => r.id === id) : undefined;
  if (step?.kind !== 'measure' || !spec) return refused(reply('not-here', {}));
  return takeReading(job, step, spec, c, now);
}

/** A reading inside its limit is taken; one outside is read back digit by digit and waits for its confirmation. */
function takeReading(
  job: Job,
  step: Step & { readonly kind: 'measure' },
  spec: ReadingSpec,
  c: Command,
  now: Moment,
): Decision {
  const given = readingIn(c, 'reading');
  if (!given) return refused(reply('not-here', {}));
  const say = text(spec.say);
  if (given.value < spec.least || given.value > spec.most || (given.unit !== null && given.unit !== spec.unit))
    return refused(reply('reading-out-of-range', { reading: say, value: digits(given.value, spec.unit) }));
  const within = limitVerdict(job.plan.procedure, step, given.value, spec.unit);
  if (within === false)
    return asks(
      [
        {
          kind: 'asked',
          question: { kind: 'reading', step: step.id, reading: spec.id, value: given.value, unit: spec.unit },
        },
      ],
      reply('confirm-reading', { reading: say, value: digits(given.value, spec.unit) }),
    );
  return writeReading(job, step, spec, given.value, within, now);
}

/** Writes a reading; the last one of a step also ends it. */
export function writeReading(
  job: Job,
  step: Step & { readonly kind: 'measure' },
  spec: ReadingSpec,
  value: number,
  within: boolean | null,
  now: Moment,
): Decision {
  const entry: EntryBody = { kind: 'measured', step: step.id, reading: spec.id, value, unit: spec.unit, within };
  const taken = reply('reading-taken', {
    reading: text(spec.say),
    value: quantity({ value, unit: spec.unit }),
  });
  const given = job.readings.get(step.id);
  const left = step.readings.filter((r) => r.id !== spec.id && !given?.has(r.id));
  const next = left[0];
  if (next) return does([entry], [taken, reply('next-reading', { reading: text(next.say) })]);
  if (step.question) return does([entry], [taken]);
  const finished = finish(job, step, now, [entry], [taken]);
  return finished.verdict === 'refused' ? does([entry], [taken, ...finished.replies]) : finished;
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
