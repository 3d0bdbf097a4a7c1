import type { Measured } from '../../fastening/quantity';
import { isUnitName } from '../../fastening/unit';
import { both, count, quantity, type Reply, reply } from '../../phrasing/reply';
import { type Command, optionIn, readingIn } from '../command';
import { asks, type Decision, does, refused } from '../decision';
import type { Job } from '../job';
import { besideOf, floorReading, inStepUnit } from '../reading-units';
import { boltState, needsReading } from '../tightening';
import { type AtBolt, type AtPass, boltAt, here } from './at-pass';
import { whatBlocks } from './bolt';
import { faultEntry } from './fault';

/** In a pass with a floor no bolt is done before its torque was read over it; what there is to say first. */
export function readingFirst(at: AtPass, bolt: number): Reply | undefined {
  if (at.pass.kind !== 'angle' || !at.pass.floor || !needsReading(at.pass, at.state, bolt)) return undefined;
  return reply('floor-first', { bolt: count(bolt), floor: quantity(at.pass.floor) });
}

/**
 * The torque at the end of a turn: of the bolt named, or of the one at the cursor. Over the floor it is kept, and the
 * bolt still has to be reported. Not over it, the reading is asked back, for it costs the bolt.
 */
export function torqueRead(job: Job, c: Command): Decision | undefined {
  const at = boltAt(job);
  const given = readingIn(c, 'reading') ?? readingIn(c, 'gauged');
  if (at?.pass.kind !== 'angle' || !at.pass.floor || !given) return undefined;
  const { floor } = at.pass;
  const named = optionIn(c, 'place');
  const bolt = named === undefined ? at.bolt : Number(named);
  const is = boltState(at.state, bolt);
  if (!at.pass.order.includes(bolt)) return refused(reply('bolt-not-in-pass', { bolt: count(bolt) }));
  if (is.kind === 'done' && !needsReading(at.pass, at.state, bolt))
    return refused(reply('bolt-already-done', { bolt: count(bolt) }));
  if (is.kind === 'held' || is.kind === 'unknown') return refused(whatBlocks(at, bolt));
  // "Pounds" alone could be twelve times off.
  if (given.unit === 'lbf') return refused(reply('read-in-pounds', { bolt: count(bolt) }));
  const spec = floorReading(floor);
  const read = { value: given.value, unit: given.unit !== null && isUnitName(given.unit) ? given.unit : floor.unit };
  const value = inStepUnit(spec, read);
  if (value === undefined) return refused(reply('not-here', {}));
  const also = besideOf(spec, read);
  const said = also ? both(quantity(read), quantity(also), false) : quantity(read);
  if (value > floor.value)
    return does(
      [{ kind: 'torque-read', ...here(at), bolt, ...read, over: true }],
      [reply('floor-kept', { bolt: count(bolt), value: said })],
    );
  const asked = job.pending?.kind === 'floor' ? job.pending : undefined;
  if (asked?.bolt === bolt && asked.value === read.value && (asked.unit ?? floor.unit) === read.unit)
    return floorMissed(job, { ...at, bolt, is }, read);
  return asks(
    [{ kind: 'asked', question: { kind: 'floor', ...here(at), bolt, ...read } }],
    reply('confirm-floor', { bolt: count(bolt), value: said, floor: quantity(floor) }),
  );
}

/** A bolt whose torque stayed under the floor has yielded or has no thread: the document's rule, or held. */
export function floorMissed(job: Job, at: AtBolt, read: Measured): Decision {
  const { entry, replies } = faultEntry(job, at, 'under-after-angle');
  return does([{ kind: 'torque-read', ...here(at), bolt: at.bolt, ...read, over: false }, entry], replies);
}
