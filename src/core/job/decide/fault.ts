import { count, type Reply, reply, text } from '../../phrasing/reply';
import type { Fault, RecoveryAction } from '../../procedure/procedure';
import { orderToSettle } from '../announce/fastener';
import { type Command, integerIn } from '../command';
import { type Decision, does, refused } from '../decision';
import type { BoltFault, EntryBody } from '../entry';
import { holdOf } from '../hold';
import type { Job } from '../job';
import { passStatesOf } from '../place';
import { passIn } from '../plan';
import { isTorque } from '../setting';
import { anyAngleSince } from '../tightening';
import { type AtBolt, type AtPass, boltAt, here, passAt } from './at-pass';
import { whatBlocks } from './bolt';

/** Which rule of the document answers a fault. Pulling through the click is over-torque, not a note. */
const RULE_FOR: Readonly<Record<Exclude<BoltFault, 'clicked-twice'>, Fault>> = {
  'clicked-early': 'early',
  'felt-soft': 'soft',
  'went-past': 'over',
  snapped: 'snapped',
  'pulled-through': 'over',
  'under-after-angle': 'under',
};

type FaultRule = 'clicked-early' | 'felt-soft' | 'went-past' | 'snapped' | 'pulled-through';

/** What only a click can do, and what only a turn can. */
const fits = (what: FaultRule, at: AtPass): boolean => {
  switch (what) {
    case 'clicked-early':
    case 'pulled-through':
      return isTorque(at.pass);
    case 'went-past':
      return at.pass.kind === 'angle';
    case 'felt-soft':
      return isTorque(at.pass) || at.pass.kind === 'angle';
    case 'snapped':
      return true;
  }
};

/** A fault on the bolt at the cursor. The document's rule decides; without one the bolt is held: stop, check the manual. */
export function fault(job: Job, what: FaultRule): Decision {
  const at = boltAt(job);
  if (!at || !fits(what, at)) return refused(reply('not-here', {}));
  // A bolt can break in any state; the rest can only be said of one that is being worked.
  if (what !== 'snapped' && (at.is.kind === 'held' || at.is.kind === 'unknown'))
    return refused(whatBlocks(at, at.bolt));
  const { entry, replies } = faultEntry(job, at, what);
  return does([entry], replies);
}

export function faultEntry(job: Job, at: AtBolt, what: Exclude<BoltFault, 'clicked-twice'>) {
  const rule = at.pass.recovery[RULE_FOR[what]];
  const action = rule && isSafe(job, at, rule.action) ? rule.action : 'hold';
  const entry: EntryBody = { kind: 'bolt-fault', ...here(at), bolt: at.bolt, fault: what, action };
  const bolt = count(at.bolt);
  const replies: readonly Reply[] = [
    rule && action !== 'hold' ? reply('fault-rule', { bolt, rule: text(rule.say) }) : reply('fault-held', { bolt }),
    ...alsoSaid(what),
  ];
  return { entry, replies };
}

function alsoSaid(what: BoltFault): readonly Reply[] {
  switch (what) {
    case 'clicked-early':
      return [reply('fault-look-early', {})];
    case 'felt-soft':
      return [reply('fault-note-soft', {})];
    case 'snapped':
      return [reply('hold-begins', {})];
    default:
      return [];
  }
}

/** No rule may have an angle given again, or a torque where an angle has been given since. */
function isSafe(job: Job, at: AtPass, action: RecoveryAction): boolean {
  if (action !== 'redo-bolt' && action !== 'repeat-pass') return true;
  if (at.pass.kind === 'angle') return false;
  return !anyAngleSince(at.passes, passStatesOf(job, at.step.id), at.passes.indexOf(at.pass));
}

/** Clicked twice is worth a line in the record and nothing more: it is not a second pass. */
export function clickedTwice(job: Job): Decision {
  const at = boltAt(job);
  if (!at || !isTorque(at.pass)) return refused(reply('not-here', {}));
  return does(
    [{ kind: 'bolt-fault', ...here(at), bolt: at.bolt, fault: 'clicked-twice', action: 'note' }],
    [reply('fault-noted', { bolt: count(at.bolt) })],
  );
}

/** The person says the order went wrong without saying which: the pass is marked and cannot end until settled. */
export function outOfOrder(job: Job): Decision {
  const at = passAt(job);
  if (!at || (at.part !== 'work' && at.part !== 'sort')) return refused(reply('not-here', {}));
  const toSettle = orderToSettle(job, at.step, at.pass);
  if (at.state.orderBroken) return refused(toSettle);
  return does([{ kind: 'order-broken', ...here(at) }], [toSettle]);
}

/** A new bolt starts from the first pass, or with all the others; no other rule makes sense for one. */
const FROM_THE_START: ReadonlySet<RecoveryAction> = new Set(['restart-bolt', 'restart-all']);

/**
 * A new fastener has no passes behind it: it starts where the document's recovery rule says, or the job holds. The rule
 * for the bolt that broke serves for the one in its place.
 */
export function boltReplaced(job: Job, c: Command): Decision {
  const at = passAt(job);
  const bolt = integerIn(c, 'bolt');
  const hold = holdOf(job);
  const isBroken = hold !== undefined && hold.bolt === bolt;
  const pass = isBroken ? passIn(job.plan, hold.step, hold.pass) : at?.pass;
  if (!at || !pass || bolt === undefined || !pass.order.includes(bolt)) return refused(reply('not-here', {}));
  const rules = [pass.recovery.replaced, ...(isBroken ? [pass.recovery.snapped] : [])];
  const rule = rules.find((r) => r && FROM_THE_START.has(r.action));
  return does(
    [{ kind: 'bolt-replaced', step: at.step.id, pass: pass.id, bolt, action: rule?.action ?? 'hold' }],
    [
      rule
        ? reply('replaced-rule', { bolt: count(bolt), rule: text(rule.say) })
        : reply('replaced-held', { bolt: count(bolt) }),
    ],
  );
}
