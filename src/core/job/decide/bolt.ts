import { bolts, count, degrees, digits, type Reply, reply } from '../../phrasing/reply';
import { echoBolt, orderToSettle } from '../announce/fastener';
import { setWrench } from '../announce/setting';
import { type Command, integerIn } from '../command';
import { asks, type Decision, does, refused } from '../decision';
import type { EntryBody, Moment } from '../entry';
import type { Job } from '../job';
import { isTorque } from '../setting';
import { boltState } from '../tightening';
import { type AtBolt, type AtPass, boltAt, here, isQuiet, passAt } from './at-pass';
import { readingFirst } from './floor';
import { after } from './settle';

export { type AtPass, passAt } from './at-pass';

/** "Done" or "clicked" with no number: about the expected bolt while the work flows, asked back otherwise. */
export function clickedOrDone(job: Job, c: Command, now: Moment): Decision | undefined {
  const at = passAt(job);
  if (!at || at.part === 'wait') return undefined;
  const found = boltAt(job);
  if (!found) return refused(...whatIsMissing(job, at, now));
  if (c.rule === 'clicked' && !isTorque(found.pass)) return refused(reply('not-here', {}));
  // Whichever was meant, nothing counts before this one is settled.
  if (blocks(found)) return refused(whatBlocks(found, found.bolt));
  if (isQuiet(job, now))
    return asks(
      [{ kind: 'asked', question: { kind: 'which-bolt', ...here(found) } }],
      reply('which-bolt', { bolt: count(found.bolt) }),
    );
  return report(job, found, found.bolt, now);
}

/** What the pass waits for, where it is not a fastener. */
function whatIsMissing(job: Job, at: AtPass, now: Moment): readonly Reply[] {
  switch (at.part) {
    case 'set':
      return setWrench(job, at.pass, now);
    case 'mark':
      return [reply('mark-heads', {})];
    case 'sort':
      return [orderToSettle(job, at.step, at.pass)];
    case 'work':
    case 'wait':
      return [reply('not-here', {})];
  }
}

export function boltDone(job: Job, c: Command, now: Moment): Decision {
  const at = boltAt(job);
  const bolt = integerIn(c, 'bolt');
  if (!at || bolt === undefined) return refused(reply('not-here', {}));
  return report(job, at, bolt, now);
}

/** The truth about one fastener: done in order, asked back where another was next, or refused with the reason. */
function report(job: Job, at: AtBolt, bolt: number, now: Moment): Decision {
  if (!at.pass.order.includes(bolt)) return refused(reply('bolt-not-in-pass', { bolt: count(bolt) }));
  const state = boltState(at.state, bolt);
  switch (state.kind) {
    case 'done':
      return refused(readingFirst(at, bolt) ?? reply('bolt-already-done', { bolt: count(bolt) }));
    case 'held':
    case 'unknown':
      // Slackening once more what may be slack already does no harm.
      if (state.kind === 'unknown' && at.pass.kind === 'slacken') break;
      return refused(whatBlocks(at, bolt));
    case 'partial':
      if (at.pass.kind === 'angle' && state.degrees < at.pass.window.least)
        return refused(
          reply('angle-short', { degrees: degrees(state.degrees), left: degrees(at.pass.degrees - state.degrees) }),
        );
      break;
    case 'open':
      break;
  }
  // What was done out of order is the truth whether or not its torque was read: that is asked for afterwards.
  const first = blocks(at) || bolt !== at.bolt ? undefined : readingFirst(at, bolt);
  if (first) return refused(first);
  if (bolt === at.bolt) return inOrder(job, at, bolt, now);
  return blocks(at) ? refused(whatBlocks(at, at.bolt)) : astray(job, at, bolt);
}

/** Whether the bolt at the cursor has to be settled before anything counts. */
export const blocks = (at: AtBolt): boolean =>
  at.is.kind === 'held' || (at.is.kind === 'unknown' && at.pass.kind !== 'slacken');

/** Why nothing counts before this bolt is settled. */
export function whatBlocks(at: AtPass, bolt: number): Reply {
  if (boltState(at.state, bolt).kind === 'held') return reply('bolt-held', { bolt: count(bolt) });
  return at.pass.kind === 'angle'
    ? reply('bolt-unknown', { bolt: count(bolt) })
    : reply('unknown-torque', { bolt: count(bolt) });
}

function inOrder(job: Job, at: AtPass, bolt: number, now: Moment): Decision {
  const entry: EntryBody = { kind: 'bolt-done', ...here(at), bolt, inOrder: true };
  return does([entry], echoBolt(after(job, [entry], now), at.step, at.pass, bolt));
}

/**
 * Another bolt than the expected one: misheard, or really out of order. Naming it once more says which. Then it is
 * written down as it is, and the pass cannot end until the rule for it is applied.
 */
function astray(job: Job, at: AtBolt, bolt: number): Decision {
  if (job.pending?.kind === 'out-of-order' && job.pending.bolt === bolt) return writtenAstray(at, bolt);
  return asks(
    [{ kind: 'asked', question: { kind: 'out-of-order', ...here(at), bolt } }],
    reply('confirm-out-of-order', { bolt: digits(bolt), expected: digits(at.bolt) }),
  );
}

export function writtenAstray(at: AtBolt, bolt: number): Decision {
  return does(
    [
      { kind: 'bolt-done', ...here(at), bolt, inOrder: false },
      { kind: 'order-broken', ...here(at) },
    ],
    [
      reply('bolt-done-out-of-order', { bolt: count(bolt), expected: count(at.bolt) }),
      ...asList(readingFirst(at, bolt)),
    ],
  );
}

const asList = (one: Reply | undefined): readonly Reply[] => (one ? [one] : []);

/** "Bolts one through six": only the run of the order that starts at the expected bolt is taken. */
export function boltsDone(job: Job, c: Command): Decision {
  const at = boltAt(job);
  const from = integerIn(c, 'from');
  const to = integerIn(c, 'to');
  if (!at || from === undefined || to === undefined) return refused(reply('not-here', {}));
  const start = at.pass.order.indexOf(from);
  const end = at.pass.order.indexOf(to);
  const run = at.pass.order.slice(start, end + 1);
  const open = run.filter((b) => boltState(at.state, b).kind === 'open');
  if (start < 0 || end < start || from !== at.bolt || open.length !== run.length)
    return refused(reply('which-bolt', { bolt: count(at.bolt) }));
  const [unread] = run.flatMap((bolt) => readingFirst(at, bolt) ?? []);
  if (unread) return refused(unread);
  const entries = run.map((bolt): EntryBody => ({ kind: 'bolt-done', ...here(at), bolt, inOrder: true }));
  const next = at.pass.order.find((b) => !run.includes(b) && boltState(at.state, b).kind !== 'done');
  const said = next === undefined ? [] : [reply('next-number', { next: count(next) })];
  return does(entries, [reply('bolts-done', { bolts: bolts(run) }), ...said]);
}
