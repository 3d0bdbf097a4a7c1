import { count, reply, text } from '../../phrasing/reply';
import { assertNever } from '../../result';
import { type Decision, does, refused } from '../decision';
import type { Moment } from '../entry';
import type { Job } from '../job';
import { limitVerdict } from '../limit';
import { passIn, stepIn } from '../plan';
import { confirmClose } from './close';
import { writeReading } from './step';

/** Carries out the question that was asked, exactly as it was read back. */
export function confirmPending(job: Job, now: Moment): Decision {
  const q = job.pending;
  if (!q) return refused(reply('not-here', {}));
  switch (q.kind) {
    case 'skip-step':
      return does([{ kind: 'step-skipped', step: q.step }], [reply('step-done', {})]);
    case 'sign-off': {
      const what = text(job.ends.get(q.end)?.what ?? q.end);
      return does(
        [{ kind: 'end-closed', end: q.end, how: 'signed-off', reason: q.reason }],
        [reply('end-closed', { what, left: count(job.ends.size - 1) })],
      );
    }
    case 'override-order':
      return does([{ kind: 'order-accepted', step: q.step, pass: q.pass, override: true }], [reply('step-done', {})]);
    case 'repeat-pass': {
      const pass = passIn(job.plan, q.step, q.pass);
      return does(
        [{ kind: 'pass-repeated', step: q.step, pass: q.pass }],
        [reply('repeat-taken', { pass: text(pass.say) })],
      );
    }
    case 'slacken-all':
      return does([{ kind: 'all-slackened', step: q.step }], [reply('slackened-taken', {})]);
    case 'reading': {
      const { step } = stepIn(job.plan, q.step);
      const spec = step.kind === 'measure' ? step.readings.find((r) => r.id === q.reading) : undefined;
      if (step.kind !== 'measure' || !spec) return refused(reply('not-here', {}));
      return writeReading(job, step, spec, q.value, limitVerdict(job.plan.procedure, step, q.value, q.unit), now);
    }
    case 'adapter':
      return q.millimetres === null
        ? does([{ kind: 'adapter-off' }], [reply('step-done', {})])
        : does([{ kind: 'adapter-on', millimetres: q.millimetres }], [reply('step-done', {})]);
    case 'close-job':
      return confirmClose(job, now);
    case 'hand-over':
      return does([{ kind: 'handed-over' }], [], ['make-hand-over']);
    case 'which-bolt':
    case 'turned-or-not':
      return refused(reply('not-here', {}));
    default:
      return assertNever(q);
  }
}

/** Nothing of what was asked happens. A bolt whose turning is in doubt stays UNKNOWN. */
export function cancelPending(job: Job): Decision {
  if (!job.pending) return refused(reply('not-here', {}));
  return does([{ kind: 'question-dropped' }], [reply('dropped-question', {})]);
}

/** After an angle was taken back. Only a clear "not turned" opens the bolt again; "turned" leaves it to be proved. */
export function turned(job: Job, wasTurned: boolean): Decision {
  const q = job.pending;
  if (q?.kind !== 'turned-or-not') return refused(reply('not-here', {}));
  if (wasTurned) return does([{ kind: 'question-dropped' }], [reply('bolt-unknown', { bolt: count(q.bolt) })]);
  return does(
    [{ kind: 'bolt-proved', step: q.step, pass: q.pass, bolt: q.bolt, verdict: 'open', clock: null }],
    [reply('mark-proves-open', { bolt: count(q.bolt) })],
  );
}
