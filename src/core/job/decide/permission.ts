import { reply, text } from '../../phrasing/reply';
import { orderToSettle } from '../announce';
import { type Command, optionIn } from '../command';
import { asks, type Decision, does, refused } from '../decision';
import type { Job } from '../job';
import { mayBeSkipped } from '../offers';
import { passStatesOf, workPlace } from '../place';
import { stepIn } from '../plan';
import { anyAngleSince } from '../tightening';
import { passAt } from './bolt';

/** Critical commands ask before they act: each becomes a pending question and nothing else. */

export function skipStep(job: Job): Decision {
  const place = workPlace(job);
  if (place.kind !== 'step') return refused(reply('skip-refused', {}));
  const { step } = stepIn(job.plan, place.step);
  if (!mayBeSkipped(step)) return refused(reply('skip-refused', {}));
  return asks(
    [{ kind: 'asked', question: { kind: 'skip-step', step: step.id } }],
    reply('confirm-skip', { step: text(step.say) }),
  );
}

export function signOff(job: Job, c: Command): Decision {
  const id = optionIn(c, 'end');
  const reason = optionIn(c, 'reason');
  const end = id === undefined ? undefined : job.ends.get(id);
  if (id === undefined || reason === undefined || !end) return refused(reply('not-here', {}));
  return asks(
    [{ kind: 'asked', question: { kind: 'sign-off', end: id, reason } }],
    reply('confirm-sign-off', { what: text(end.what), reason: text(reason) }),
  );
}

/** Going ahead on purpose after work out of order, where the document's own rule is not applied. */
export function goAhead(job: Job): Decision {
  const at = passAt(job);
  if (at?.part !== 'sort') return refused(reply('not-here', {}));
  const rule = at.pass.recovery['out-of-order'];
  if (rule?.action === 'accept')
    return does(
      [{ kind: 'order-accepted', step: at.step.id, pass: at.pass.id, override: false }],
      [reply('step-done', {})],
    );
  return asks(
    [{ kind: 'asked', question: { kind: 'override-order', step: at.step.id, pass: at.pass.id } }],
    orderToSettle(job, at.step, at.pass),
    reply('confirm-override', { bolts: { kind: 'bolts', numbers: at.pass.order } }),
  );
}

/** A torque pass may be repeated only while none of its fasteners has had an angle since the last full slacken. */
export function repeatPass(job: Job): Decision {
  const at = passAt(job);
  if (!at || (at.part !== 'work' && at.part !== 'sort')) return refused(reply('not-here', {}));
  if (at.pass.kind !== 'torque' && at.pass.kind !== 'repeat') return refused(reply('repeat-refused-kind', {}));
  if (anyAngleSince(at.passes, passStatesOf(job, at.step.id), at.passes.indexOf(at.pass)))
    return refused(reply('repeat-refused-angle', {}));
  return asks(
    [{ kind: 'asked', question: { kind: 'repeat-pass', step: at.step.id, pass: at.pass.id } }],
    reply('confirm-repeat', { pass: text(at.pass.say) }),
  );
}

export function slackenAll(job: Job): Decision {
  const at = passAt(job);
  if (!at) return refused(reply('not-here', {}));
  return asks([{ kind: 'asked', question: { kind: 'slacken-all', step: at.step.id } }], reply('confirm-slacken', {}));
}
