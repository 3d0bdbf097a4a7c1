import { clock, count, reply } from '../../phrasing/reply';
import { type Command, integerIn } from '../command';
import { type Decision, does, refused } from '../decision';
import type { Job } from '../job';
import { boltState, markDegrees } from '../tightening';
import { type AtPass, passAt } from './bolt';

/** "Not sure I did six": the bolt is UNKNOWN and blocks its pass. Nothing is assumed either way. */
export function notSure(job: Job, c: Command): Decision {
  const at = passAt(job);
  const bolt = integerIn(c, 'bolt');
  if (!at || bolt === undefined || !at.pass.order.includes(bolt)) return refused(reply('not-here', {}));
  return does(
    [{ kind: 'bolt-unknown', step: at.step.id, pass: at.pass.id, bolt, why: 'not-sure' }],
    [howToProve(at, bolt)],
  );
}

/** What proves this bolt: for an angle where its mark points now, for a torque nothing but the pass again. */
export function howToProve(at: AtPass, bolt: number) {
  if (at.pass.kind !== 'angle') return reply('unknown-torque', { bolt: count(bolt) });
  return reply('where-is-mark', { bolt: count(bolt), clock: clock(hourOf(marks(at).after)) });
}

const marks = (at: AtPass) => markDegrees(at.passes, at.passes.indexOf(at.pass));

/** The clock hour a mark points at, 12 for straight up: thirty degrees an hour. */
const hourOf = (degreesClockwise: number): number => {
  const hour = Math.round(degreesClockwise / 30) % 12;
  return hour === 0 ? 12 : hour;
};

/**
 * Where the mark points now, compared with where this pass should leave it. A mark at the place where this pass
 * found it proves the bolt open; anything else proves nothing and the bolt stays UNKNOWN.
 */
export function markAt(job: Job, c: Command): Decision {
  const at = passAt(job);
  const hour = integerIn(c, 'clock');
  const bolt = at ? unknownBolt(at) : undefined;
  if (at?.pass.kind !== 'angle' || hour === undefined || bolt === undefined) return refused(reply('not-here', {}));
  const { before, after } = marks(at);
  const proved = { kind: 'bolt-proved' as const, step: at.step.id, pass: at.pass.id, bolt, clock: hour };
  if (hourOf(before) !== hourOf(after)) {
    if (hour === hourOf(after))
      return does([{ ...proved, verdict: 'done' }], [reply('mark-proves-done', { bolt: count(bolt) })]);
    if (hour === hourOf(before))
      return does([{ ...proved, verdict: 'open' }], [reply('mark-proves-open', { bolt: count(bolt) })]);
  }
  return refused(
    reply('mark-proves-nothing', { bolt: count(bolt), before: clock(hourOf(before)), after: clock(hourOf(after)) }),
  );
}

/** No mark means no proof. */
export function noMark(job: Job): Decision {
  const at = passAt(job);
  const bolt = at ? unknownBolt(at) : undefined;
  if (!at || bolt === undefined) return refused(reply('not-here', {}));
  return refused(reply('bolt-unknown', { bolt: count(bolt) }));
}

/** The first fastener of the pass in doubt: the one every proof is about. */
const unknownBolt = (at: AtPass): number | undefined =>
  at.pass.order.find((b) => boltState(at.state, b).kind === 'unknown');
