import { convert, type Measured } from '../fastening/quantity';
import { type AdapterOn, wayOf } from '../job/adapter';
import { openEnds } from '../job/announce/ends';
import { boltAt, passAt } from '../job/decide/at-pass';
import { readingSay } from '../job/describe';
import type { Job } from '../job/job';
import { clockOf, markDegrees } from '../job/marks';
import type { Pending } from '../job/pending';
import { passIn, stepIn } from '../job/plan';
import { besideOf, floorReading } from '../job/reading-units';
import { boltState } from '../job/tightening';
import { figureText } from '../phrasing/figure-text';
import { clock, count, quantity, type Reply, reason, reply, text } from '../phrasing/reply';
import { assertNever } from '../result';

/** A question as somebody across the bay must see it: what is asked, what is read back, and that in the other unit. */
export type QuestionNow = { readonly line: Reply; readonly value?: Reply; readonly also?: Reply };

/** The question that waits. How it is answered is not in it: the words that work now stand below. */
export function questionNow(job: Job, q: Pending): QuestionNow {
  switch (q.kind) {
    case 'skip-step':
      return { line: reply('asked-skip', { step: text(stepIn(job.plan, q.step).step.say) }) };
    case 'sign-off': {
      const end = job.ends.get(q.end);
      return { line: reply('asked-sign-off', { what: openEnds(end ? [end] : []), reason: reason(q.reason) }) };
    }
    case 'override-order':
      return { line: reply('asked-override', {}) };
    case 'repeat-pass':
      return { line: reply('asked-repeat', { pass: text(passIn(job.plan, q.step, q.pass).say) }) };
    case 'slacken-all':
      return { line: reply('asked-slacken', {}) };
    case 'reading':
      return readBack(job, q);
    case 'adapter':
      return q.millimetres === null
        ? { line: reply('asked-adapter-off', {}) }
        : adapterBack({ millimetres: q.millimetres, degrees: q.degrees });
    case 'which-bolt':
      return { line: reply('asked-which-bolt', { bolt: count(boltAt(job)?.bolt ?? 0) }) };
    case 'out-of-order': {
      const slots = { bolt: count(q.bolt), expected: count(boltAt(job)?.bolt ?? 0) };
      return { line: reply('asked-out-of-order', slots), value: boltBack(q.bolt) };
    }
    case 'held-bolt': {
      const bolt = count(q.bolt);
      const line = q.as === 'done' ? reply('asked-held-done', { bolt }) : reply('asked-held-again', { bolt });
      return { line, value: boltBack(q.bolt) };
    }
    case 'mark': {
      const points = clock(q.clock);
      return {
        line: reply('asked-mark', { bolt: count(q.bolt), clock: points }),
        value: reply('shown-value', { value: points }),
      };
    }
    case 'floor':
      return floorBack(job, q);
    case 'marks':
      return marksBack(job);
    case 'turned-or-not':
      return { line: reply('asked-turned', { bolt: count(q.bolt) }), value: boltBack(q.bolt) };
    case 'close-job':
      return { line: reply('asked-close', {}) };
    case 'hand-over':
      return { line: reply('asked-hand-over', {}) };
    default:
      return assertNever(q);
  }
}

const boltBack = (bolt: number): Reply => reply('shown-bolt', { bolt: count(bolt), where: text('') });

const figure = (read: Measured): Reply => reply('shown-value', { value: quantity(read) });

/** What was read, in the unit it was read in, and in the one beside it. */
function figures(read: Measured, beside: Measured | null): Pick<QuestionNow, 'value' | 'also'> {
  return { value: figure(read), ...(beside ? { also: figure(beside) } : {}) };
}

function readBack(job: Job, q: Pending & { readonly kind: 'reading' }): QuestionNow {
  const { step } = stepIn(job.plan, q.step);
  const spec = step.kind === 'measure' ? step.readings.find((r) => r.id === q.reading) : undefined;
  const line = reply('asked-reading', { reading: text(readingSay(job.plan, q.step, q.reading)) });
  return { line, ...figures(q, spec ? besideOf(spec, q) : null) };
}

function floorBack(job: Job, q: Pending & { readonly kind: 'floor' }): QuestionNow {
  const pass = passIn(job.plan, q.step, q.pass);
  const floor = pass.kind === 'angle' ? pass.floor : undefined;
  const read: Measured = { value: q.value, unit: q.unit ?? floor?.unit ?? 'N·m' };
  const slots = { bolt: count(q.bolt), floor: quantity(floor ?? read) };
  return { line: reply('asked-floor', slots), ...figures(read, floor ? besideOf(floorReading(floor), read) : null) };
}

/** An adapter's length is kept in millimetres, however it was said: what is written shorter was said, or is as good. */
function adapterBack(on: AdapterOn): QuestionNow {
  const metric: Measured = { value: on.millimetres, unit: 'mm' };
  const inches = convert(metric, 'in');
  const line = reply('asked-adapter', { way: wayOf(on) });
  if (!inches.ok) return { line, value: figure(metric) };
  const other: Measured = { value: Number(inches.value.toFixed(2)), unit: 'in' };
  const [first, second] =
    figureText(other.value).length < figureText(metric.value).length ? [other, metric] : [metric, other];
  return { line, ...figures(first, second) };
}

/** Every mark of an angle pass, before it is left half done. Where they point is in the question: huge, it would not fit below. */
function marksBack(job: Job): QuestionNow {
  const at = passAt(job);
  const done = at ? at.pass.order.filter((n) => boltState(at.state, n).kind === 'done').length : 0;
  const points = clock(clockOf(at ? markDegrees(at.passes, at.passes.indexOf(at.pass)).after : 0));
  return { line: reply('asked-marks', { done: count(done), clock: points }) };
}
