import { count, reply, text } from '../../phrasing/reply';
import type { Fault } from '../../procedure/procedure';
import { orderToSettle } from '../announce';
import { type Command, integerIn } from '../command';
import { type Decision, does, refused } from '../decision';
import type { BoltFault, EntryBody } from '../entry';
import type { Job } from '../job';
import { expectedBolt } from '../tightening';
import { type AtPass, passAt } from './bolt';

/** Which rule of the document answers a fault. Pulling through the click is over-torque, not a note. */
const RULE_FOR: Readonly<Record<Exclude<BoltFault, 'clicked-twice'>, Fault>> = {
  'clicked-early': 'early',
  'felt-soft': 'soft',
  'went-past': 'over',
  snapped: 'snapped',
  'pulled-through': 'over',
  'under-after-angle': 'soft',
};

type FaultRule = 'clicked-early' | 'felt-soft' | 'went-past' | 'snapped' | 'pulled-through';

/** A fault on the bolt at the cursor. The document's rule decides; without one the bolt is held: stop, check the manual. */
export function fault(job: Job, what: FaultRule): Decision {
  const at = passAt(job);
  const bolt = at ? expectedBolt(at.pass, at.state) : undefined;
  if (at?.part !== 'work' || bolt === undefined) return refused(reply('not-here', {}));
  const { entry, replies } = faultEntry(at, bolt, what);
  return does([entry], replies);
}

export function faultEntry(at: AtPass, bolt: number, what: Exclude<BoltFault, 'clicked-twice'>) {
  const rule = at.pass.recovery[RULE_FOR[what]];
  const entry: EntryBody = {
    kind: 'bolt-fault',
    step: at.step.id,
    pass: at.pass.id,
    bolt,
    fault: what,
    action: rule?.action ?? 'hold',
  };
  const replies = rule
    ? [reply('fault-rule', { bolt: count(bolt), rule: text(rule.say) })]
    : [reply('fault-held', { bolt: count(bolt) })];
  return { entry, replies };
}

/** Clicked twice is worth a line in the record and nothing more: it is not a second pass. */
export function clickedTwice(job: Job): Decision {
  const at = passAt(job);
  const bolt = at ? expectedBolt(at.pass, at.state) : undefined;
  if (at?.part !== 'work' || bolt === undefined) return refused(reply('not-here', {}));
  return does(
    [{ kind: 'bolt-fault', step: at.step.id, pass: at.pass.id, bolt, fault: 'clicked-twice', action: 'note' }],
    [reply('fault-noted', { bolt: count(bolt) })],
  );
}

/** The person says the order went wrong without saying which: the pass is marked and cannot end until settled. */
export function outOfOrder(job: Job): Decision {
  const at = passAt(job);
  if (!at || (at.part !== 'work' && at.part !== 'sort')) return refused(reply('not-here', {}));
  if (at.state.orderBroken) return refused(orderToSettle(job, at.step, at.pass));
  return does([{ kind: 'order-broken', step: at.step.id, pass: at.pass.id }], [orderToSettle(job, at.step, at.pass)]);
}

/** A new fastener has no passes behind it: it starts where the document's recovery rule says, or the job holds. */
export function boltReplaced(job: Job, c: Command): Decision {
  const at = passAt(job);
  const bolt = integerIn(c, 'bolt');
  if (!at || bolt === undefined || !at.pass.order.includes(bolt)) return refused(reply('not-here', {}));
  const rule = at.pass.recovery.replaced;
  return does(
    [{ kind: 'bolt-replaced', step: at.step.id, pass: at.pass.id, bolt, action: rule?.action ?? 'hold' }],
    [
      rule
        ? reply('replaced-rule', { bolt: count(bolt), rule: text(rule.say) })
        : reply('replaced-held', { bolt: count(bolt) }),
    ],
  );
}

/** Every bolt from here on is under a wrench nobody has checked; the record says so. */
export function droppedWrench(): Decision {
  return does([{ kind: 'wrench-dropped' }], [reply('wrench-dropped', {})]);
}
