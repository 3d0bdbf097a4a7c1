import { clock, count, type Reply, reply } from '../../phrasing/reply';
import { nextBolt, partly, proofWanted } from '../announce/fastener';
import { type Command, integerIn } from '../command';
import { asks, type Decision, does, refused } from '../decision';
import type { EntryBody, Moment } from '../entry';
import type { Job } from '../job';
import { clockOf, markDegrees, markProof } from '../marks';
import { passStatesOf } from '../place';
import { boltState, needsReading, passState, sinceSlacken } from '../tightening';
import { type AtPass, here, passAt } from './at-pass';
import { whatBlocks } from './bolt';
import { after } from './settle';

/** "Not sure I did six": the bolt is UNKNOWN and blocks its pass. Nothing is assumed either way. */
export function notSure(job: Job, c: Command): Decision {
  const now = passAt(job);
  const bolt = integerIn(c, 'bolt');
  const at = now && bolt !== undefined ? passInQuestion(job, now, bolt) : undefined;
  if (!at || bolt === undefined) return refused(reply('not-here', {}));
  // A held bolt waits for more than a proof.
  if (boltState(at.state, bolt).kind === 'held') return refused(whatBlocks(at, bolt));
  return does(
    [{ kind: 'bolt-unknown', ...here(at), bolt, why: 'not-sure' }],
    [proofWanted(job, at.step, at.pass, bolt)],
  );
}

/** The pass being worked; before its first bolt can be, the one this bolt was in last. */
function passInQuestion(job: Job, now: AtPass, bolt: number): AtPass | undefined {
  if (now.part === 'work' || now.part === 'sort') return now.pass.order.includes(bolt) ? now : undefined;
  const index = now.passes.indexOf(now.pass);
  const earlier = now.passes.slice(sinceSlacken(now.passes, index), index).findLast((p) => p.order.includes(bolt));
  if (!earlier) return undefined;
  return { ...now, pass: earlier, part: 'work', state: passState(passStatesOf(job, now.step.id), earlier.id) };
}

/**
 * Where the mark points now. What proves nothing is said at once; what would settle the bolt is read back first, and
 * counts when it is said again.
 */
export function markAt(job: Job, c: Command, now: Moment): Decision {
  const at = passAt(job);
  const hour = integerIn(c, 'clock');
  const found = at ? unknownBolt(at) : undefined;
  if (at?.pass.kind !== 'angle' || hour === undefined || !found) return refused(reply('not-here', {}));
  const { bolt } = found;
  const index = at.passes.indexOf(at.pass);
  const { kind } = markProof(at.passes, index, hour, found.had);
  if (kind === 'elsewhere' || kind === 'cannot-tell') {
    const { before, after } = markDegrees(at.passes, index);
    const slots = { bolt: count(bolt), before: clock(clockOf(before)), after: clock(clockOf(after)) };
    return refused(reply('mark-proves-nothing', slots));
  }
  const asked = job.pending?.kind === 'mark' ? job.pending : undefined;
  if (asked?.bolt === bolt && asked.clock === hour) return markProved(job, hour, now);
  return asks(
    [{ kind: 'asked', question: { kind: 'mark', ...here(at), bolt, clock: hour } }],
    reply('confirm-mark', { bolt: count(bolt), clock: clock(hour) }),
  );
}

/** Where the mark points, confirmed: compared with where this pass should leave it. Then what there is to do next. */
export function markProved(job: Job, hour: number, now: Moment): Decision {
  const at = passAt(job);
  const found = at ? unknownBolt(at) : undefined;
  if (at?.pass.kind !== 'angle' || !found) return refused(reply('not-here', {}));
  const of = { ...here(at), bolt: found.bolt, clock: hour };
  const slots = { bolt: count(found.bolt), clock: clock(hour) };
  const proof = markProof(at.passes, at.passes.indexOf(at.pass), hour, found.had);
  const { step, pass } = at;
  const proved = (entry: EntryBody, ...said: readonly Reply[]): Decision =>
    does([entry], [...said, ...nextBolt(after(job, [entry], now), step, pass)]);
  switch (proof.kind) {
    case 'turned':
      // What was not read in the turn cannot be read afterwards.
      if (needsReading(at.pass, at.state, found.bolt))
        return refused(reply('floor-unread', { bolt: count(found.bolt) }));
      return proved({ kind: 'bolt-proved', ...of, verdict: 'done' }, reply('mark-proves-done', slots));
    case 'not-turned':
      return proved({ kind: 'bolt-proved', ...of, verdict: 'open' }, reply('mark-proves-open', slots));
    case 'partly-turned':
      return proved({ kind: 'swing-proved', ...of, degrees: proof.degrees });
    case 'elsewhere':
    case 'cannot-tell':
      return refused(whatBlocks(at, found.bolt));
  }
}

/** No mark means no proof. */
export function noMark(job: Job): Decision {
  const at = passAt(job);
  const found = at ? unknownBolt(at) : undefined;
  if (!at || !found) return refused(reply('not-here', {}));
  return refused(whatBlocks(at, found.bolt));
}

/** After an angle was taken back. Only a clear "not turned" opens the bolt again; "turned" leaves it to be proved. */
export function turned(job: Job, wasTurned: boolean): Decision {
  const q = job.pending;
  const at = passAt(job);
  if (q?.kind !== 'turned-or-not' || at?.pass.kind !== 'angle') return refused(reply('not-here', {}));
  const { bolt } = q;
  if (wasTurned) return does([{ kind: 'question-dropped' }], [proofWanted(job, at.step, at.pass, bolt)]);
  const is = boltState(passState(passStatesOf(job, q.step), q.pass), bolt);
  // Not turned since the swings that stand: those were given, and only those.
  const had = is.kind === 'unknown' ? is.had : 0;
  const of = { step: q.step, pass: q.pass, bolt };
  return had > 0
    ? does([{ kind: 'swing-proved', ...of, degrees: had, clock: null }], [partly(at.pass, bolt, had)])
    : does(
        [{ kind: 'bolt-proved', ...of, verdict: 'open', clock: null }],
        [reply('not-turned-open', { bolt: count(bolt) })],
      );
}

/** The first fastener of the pass in doubt: the one every proof is about. */
function unknownBolt(at: AtPass): { readonly bolt: number; readonly had: number } | undefined {
  for (const bolt of at.pass.order) {
    const is = boltState(at.state, bolt);
    if (is.kind === 'unknown') return { bolt, had: is.had };
  }
  return undefined;
}
