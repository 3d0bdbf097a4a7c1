import { digits, quantity, reply, text } from '../../phrasing/reply';
import type { ReadingSpec, Step } from '../../procedure/procedure';
import { type Command, optionIn, readingIn } from '../command';
import { asks, type Decision, does, refused } from '../decision';
import type { EntryBody, Moment } from '../entry';
import type { Job } from '../job';
import { limitVerdict } from '../limit';
import { nextReading } from '../place';
import { after } from './settle';
import { finish, stepAt } from './step';
import { sumsOf } from './tell/sums';

type Measure = Step & { readonly kind: 'measure' };

/** A reading with no place named is about the next one, or about the one that is being asked back. */
export function measured(job: Job, c: Command, now: Moment): Decision {
  const step = stepAt(job);
  if (step?.kind !== 'measure') return refused(reply('not-here', {}));
  const asked = job.pending?.kind === 'reading' ? job.pending.reading : undefined;
  const spec = asked === undefined ? nextReading(job, step.id) : step.readings.find((r) => r.id === asked);
  return spec ? takeReading(job, step, spec, c, now) : refused(reply('not-here', {}));
}

export function measuredAt(job: Job, c: Command, now: Moment): Decision {
  const step = stepAt(job);
  const id = optionIn(c, 'place');
  const spec = step?.kind === 'measure' ? step.readings.find((r) => r.id === id) : undefined;
  if (step?.kind !== 'measure' || !spec) return refused(reply('not-here', {}));
  return takeReading(job, step, spec, c, now);
}

/**
 * A reading inside its limit is taken. One outside is read back digit by digit and waits: the same value once more
 * confirms it, another value takes its place.
 */
function takeReading(job: Job, step: Measure, spec: ReadingSpec, c: Command, now: Moment): Decision {
  const given = readingIn(c, 'reading');
  if (!given) return refused(reply('not-here', {}));
  const say = text(spec.say);
  const { value } = given;
  if (value < spec.least || value > spec.most || (given.unit !== null && given.unit !== spec.unit))
    return refused(reply('reading-out-of-range', { reading: say, value: digits(value, spec.unit) }));
  const within = limitVerdict(job.plan.procedure, step, value, spec.unit);
  const asked = job.pending?.kind === 'reading' ? job.pending : undefined;
  const isRepeated = asked?.reading === spec.id && asked.value === value;
  if (within !== false || isRepeated) return writeReading(job, step, spec, value, within, now);
  return asks(
    [{ kind: 'asked', question: { kind: 'reading', step: step.id, reading: spec.id, value, unit: spec.unit } }],
    reply('confirm-reading', { reading: say, value: digits(value, spec.unit) }),
  );
}

/** Writes a reading; the last one of a step also ends it, or brings up its question. */
export function writeReading(
  job: Job,
  step: Measure,
  spec: ReadingSpec,
  value: number,
  within: boolean | null,
  now: Moment,
): Decision {
  const entry: EntryBody = { kind: 'measured', step: step.id, reading: spec.id, value, unit: spec.unit, within };
  const taken = reply('reading-taken', { reading: text(spec.say), value: quantity({ value, unit: spec.unit }) });
  const given = job.readings.get(step.id);
  const next = step.readings.find((r) => r.id !== spec.id && !given?.has(r.id));
  if (next) return does([entry], [taken, reply('next-reading', { reading: text(next.say) })]);
  const sums = sumsOf(after(job, [entry], now), step);
  if (step.question) return does([entry], [taken, ...sums, reply('ask-question', { text: text(step.question.ask) })]);
  const finished = finish(job, step, now, [entry], [taken, ...sums]);
  return finished.verdict === 'refused' ? does([entry], [taken, ...sums, ...finished.replies]) : finished;
}
