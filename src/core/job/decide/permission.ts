import { count, reason as reasonSaid, reply, text } from '../../phrasing/reply';
import { openEnds } from '../announce/ends';
import { orderToSettle } from '../announce/fastener';
import { type Command, optionIn } from '../command';
import { asks, type Decision, does, refused } from '../decision';
import type { BoltFault } from '../entry';
import type { Job } from '../job';
import { passStatesOf, workPlace } from '../place';
import { stepIn } from '../plan';
import { maySkip } from '../skipping';
import { anyAngleSince, boltState } from '../tightening';
import { type AtPass, here, passAt } from './at-pass';
import { whatBlocks } from './bolt';

/** Critical commands ask before they act: each becomes a pending question and nothing else. */

export function skipStep(job: Job): Decision {
  const place = workPlace(job);
  if (place.kind !== 'step') return refused(reply('skip-refused', {}));
  const { step } = stepIn(job.plan, place.step);
  if (!maySkip(job, step)) return refused(reply('skip-refused', {}));
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
    reply('confirm-sign-off', { what: openEnds([end]), reason: reasonSaid(reason) }),
  );
}

/** Going ahead on purpose: after work out of order, or with a held bolt the manual has an answer for. */
export function goAhead(job: Job): Decision {
  const at = passAt(job);
  if (at?.part === 'sort') return goAheadWithOrder(job, at);
  const bolt = at?.pass.order.find((n) => boltState(at.state, n).kind === 'held');
  const is = at && bolt !== undefined ? boltState(at.state, bolt) : undefined;
  if (!at || bolt === undefined || is?.kind !== 'held') return refused(reply('not-here', {}));
  const as = settledAs(at, is.fault);
  if (as === null) return refused(reply('held-needs-new', { bolt: count(bolt) }));
  return asks(
    [{ kind: 'asked', question: { kind: 'held-bolt', ...here(at), bolt, as } }],
    whatBlocks(at, bolt),
    reply(as === 'done' ? 'confirm-held-done' : 'confirm-held-again', { bolt: count(bolt) }),
  );
}

/**
 * What the manual can do for a held bolt short of a new one: a pull that failed may be tried again, a bolt that went
 * too far may be left as it is. An angle is never given again, and a broken or yielded bolt is good for nothing but to
 * be slackened.
 */
function settledAs(at: AtPass, fault: BoltFault | 'replaced'): 'open' | 'done' | null {
  if (at.pass.kind === 'slacken') return 'done';
  switch (fault) {
    case 'clicked-early':
      return 'open';
    case 'felt-soft':
      return at.pass.kind === 'angle' ? null : 'open';
    case 'went-past':
    case 'pulled-through':
      return 'done';
    case 'snapped':
    case 'under-after-angle':
    case 'clicked-twice':
    case 'replaced':
      return null;
  }
}

/** Where the document's own rule is to leave it, no override is needed. */
function goAheadWithOrder(job: Job, at: AtPass): Decision {
  const rule = at.pass.recovery['out-of-order'];
  if (rule?.action === 'accept')
    return does([{ kind: 'order-accepted', ...here(at), override: false }], [reply('step-done', {})]);
  return asks(
    [{ kind: 'asked', question: { kind: 'override-order', ...here(at) } }],
    orderToSettle(job, at.step, at.pass),
    reply('confirm-override', { bolts: { kind: 'bolts', numbers: at.pass.order } }),
  );
}

/** A torque pass may be repeated only while none of its fasteners has had an angle since the last full slacken. */
export const mayRepeat = (job: Job, at: AtPass): boolean =>
  (at.pass.kind === 'torque' || at.pass.kind === 'repeat') &&
  !anyAngleSince(at.passes, passStatesOf(job, at.step.id), at.passes.indexOf(at.pass));

export function repeatPass(job: Job): Decision {
  const at = passAt(job);
  if (!at || (at.part !== 'work' && at.part !== 'sort')) return refused(reply('not-here', {}));
  if (at.pass.kind !== 'torque' && at.pass.kind !== 'repeat') return refused(reply('repeat-refused-kind', {}));
  if (!mayRepeat(job, at)) return refused(reply('repeat-refused-angle', {}));
  return asks(
    [{ kind: 'asked', question: { kind: 'repeat-pass', ...here(at) } }],
    reply('confirm-repeat', { pass: text(at.pass.say) }),
  );
}

export function slackenAll(job: Job): Decision {
  const at = passAt(job);
  if (at?.step.kind !== 'tighten') return refused(reply('not-here', {}));
  return asks([{ kind: 'asked', question: { kind: 'slacken-all', step: at.step.id } }], reply('confirm-slacken', {}));
}
