import { count, reply, text } from '../../phrasing/reply';
import { assertNever } from '../../result';
import { openEnds } from '../announce/ends';
import { type Decision, does, refused } from '../decision';
import type { Moment } from '../entry';
import type { Job } from '../job';
import { limitVerdict } from '../limit';
import { passIn, stepIn } from '../plan';
import { boltState } from '../tightening';
import { boltAt } from './at-pass';
import { writtenAstray } from './bolt';
import { confirmClose } from './close';
import { markProved } from './doubt';
import { floorMissed } from './floor';
import { gone } from './leaving';
import { writeReading } from './reading';
import { adapterConfirmed } from './wrench';

/** Carries out the question that was asked, exactly as it was read back. */
export function confirmPending(job: Job, now: Moment): Decision {
  const q = job.pending;
  if (!q) return refused(reply('not-here', {}));
  switch (q.kind) {
    case 'skip-step':
      return does([{ kind: 'step-skipped', step: q.step }], [reply('step-done', {})]);
    case 'sign-off': {
      const end = job.ends.get(q.end);
      const what = end ? openEnds([end]) : text(q.end);
      return does(
        [{ kind: 'end-closed', end: q.end, how: 'signed-off', reason: q.reason }],
        [reply('end-closed', { what, left: count(job.ends.size - 1) })],
      );
    }
    case 'out-of-order': {
      const at = boltAt(job);
      return at ? writtenAstray(at, q.bolt) : refused(reply('not-here', {}));
    }
    case 'override-order':
      return does([{ kind: 'order-accepted', step: q.step, pass: q.pass, override: true }], [reply('step-done', {})]);
    case 'held-bolt':
      return does(
        [{ kind: 'bolt-settled', step: q.step, pass: q.pass, bolt: q.bolt, as: q.as }],
        [reply(q.as === 'done' ? 'held-done' : 'held-open', { bolt: count(q.bolt) })],
      );
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
      return writeReading(job, step, spec, q, limitVerdict(job.plan.procedure, step, q), now, false);
    }
    case 'adapter':
      return adapterConfirmed(job, q.millimetres === null ? null : { ...q, millimetres: q.millimetres }, now);
    case 'mark':
      return markProved(job, q.clock, now);
    case 'floor': {
      const at = boltAt(job);
      const is = at && boltState(at.state, q.bolt);
      if (!at || !is || at.pass.kind !== 'angle' || !at.pass.floor) return refused(reply('not-here', {}));
      return floorMissed(job, { ...at, bolt: q.bolt, is }, { value: q.value, unit: q.unit ?? at.pass.floor.unit });
    }
    case 'marks':
      return gone(q.leaving, [{ kind: 'marks-read', step: q.step, pass: q.pass }]);
    case 'close-job':
      return confirmClose(job, now);
    case 'hand-over':
      return gone('hand-over', []);
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
