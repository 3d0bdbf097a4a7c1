import type { Measured } from '../../fastening/quantity';
import { isUnitName } from '../../fastening/unit';
import { both, digits, quantity, reply, type Said, text } from '../../phrasing/reply';
import type { ReadingSpec, Step } from '../../procedure/procedure';
import { type Command, optionIn, readingIn } from '../command';
import { asks, type Decision, does, refused } from '../decision';
import type { EntryBody, Moment } from '../entry';
import type { Job } from '../job';
import { limitVerdict } from '../limit';
import { nextReading } from '../place';
import { besideOf, isAmbiguous, isPlausible } from '../reading-units';
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
  const given = readingIn(c, 'reading') ?? readingIn(c, 'gauged');
  if (!given) return refused(reply('not-here', {}));
  const say = text(spec.say);
  const read = measuredIn(spec, given);
  if (!read || !isPlausible(spec, read))
    return refused(reply('reading-out-of-range', { reading: say, value: digits(given.value, read?.unit ?? null) }));
  const within = limitVerdict(job.plan.procedure, step, read);
  const asked = job.pending?.kind === 'reading' ? job.pending : undefined;
  const isRepeated = asked?.reading === spec.id && asked.value === read.value && asked.unit === read.unit;
  const isAloud = given.unit === null && isAmbiguous(spec, read.value);
  if (within !== false || isRepeated) return writeReading(job, step, spec, read, within, now, isAloud);
  return asks(
    [{ kind: 'asked', question: { kind: 'reading', step: step.id, reading: spec.id, ...read } }],
    reply('confirm-reading', { reading: say, value: inBoth(spec, read, isAloud, digits(read.value, read.unit)) }),
  );
}

/** A number said alone is in the unit of its step; undefined for a unit nobody knows. */
function measuredIn(spec: ReadingSpec, { value, unit }: { readonly value: number; readonly unit: string | null }) {
  if (unit === null) return { value, unit: spec.unit };
  return isUnitName(unit) ? { value, unit } : undefined;
}

/** A reading as it was said, shown in the unit beside it too, and said in both where the unit was anybody's guess. */
function inBoth(spec: ReadingSpec, read: Measured, isAloud: boolean, first: Said): Said {
  const also = besideOf(spec, read);
  return also ? both(first, quantity(also), isAloud) : first;
}

/** Writes a reading; the last one of a step also ends it, or brings up its question. */
export function writeReading(
  job: Job,
  step: Measure,
  spec: ReadingSpec,
  read: Measured,
  within: boolean | null,
  now: Moment,
  isAloud: boolean,
): Decision {
  const { value, unit } = read;
  const entry: EntryBody = { kind: 'measured', step: step.id, reading: spec.id, value, unit, within };
  const said = inBoth(spec, read, isAloud, quantity(read));
  const taken = reply('reading-taken', { reading: text(spec.say), value: said });
  const given = job.readings.get(step.id);
  const next = step.readings.find((r) => r.id !== spec.id && !given?.has(r.id));
  if (next) return does([entry], [taken, reply('next-reading', { reading: text(next.say) })]);
  const sums = sumsOf(after(job, [entry], now), step);
  if (step.question) return does([entry], [taken, ...sums, reply('ask-question', { text: text(step.question.ask) })]);
  const finished = finish(job, step, now, [entry], [taken, ...sums]);
  return finished.verdict === 'refused' ? does([entry], [taken, ...sums, ...finished.replies]) : finished;
}
