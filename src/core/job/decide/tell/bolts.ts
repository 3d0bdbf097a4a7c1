import { count, degrees, quantity, type Reply, replies, reply, text } from '../../../phrasing/reply';
import { patternOf, whereIs } from '../../announce/fastener';
import { type Command, integerIn } from '../../command';
import { type Decision, refused, told } from '../../decision';
import type { Job } from '../../job';
import { boltState, expectedBolt } from '../../tightening';
import type { AtPass } from '../at-pass';
import { torque } from './figures';

export function tellBolt(at: AtPass | undefined, c: Command): Decision {
  const number = integerIn(c, 'bolt');
  if (!at || number === undefined) return refused(reply('not-here', {}));
  const bolt = count(number);
  if (!at.pass.order.includes(number)) return told(reply('bolt-not-in-pass', { bolt }));
  const state = boltState(at.state, number);
  switch (state.kind) {
    case 'done':
      return told(reply(state.doubtful ? 'bolt-is-done-doubtful' : 'bolt-is-done', { bolt }));
    case 'open':
      return told(reply('bolt-is-open', { bolt }));
    case 'partial':
      return told(reply('bolt-is-partial', { bolt, degrees: degrees(state.degrees) }));
    case 'unknown':
      return told(reply('bolt-is-unknown', { bolt }));
    case 'held':
      return told(reply('bolt-is-held', { bolt }));
  }
}

export const wholePass = (at: AtPass): Reply =>
  reply('whole-pass', {
    pass: text(at.pass.say),
    value: replies([torque(at)]),
    bolts: { kind: 'bolts', numbers: at.pass.order },
  });

export function tellSide(job: Job, at: AtPass | undefined): Decision {
  const bolt = at ? expectedBolt(at.pass, at.state) : undefined;
  if (!at || bolt === undefined) return refused(reply('not-here', {}));
  return told(reply('side-is', { bolt: count(bolt), where: text(whereIs(job, at.step, bolt)) }));
}

export function tellLength(job: Job, at: AtPass | undefined, c: Command): Decision {
  const bolt = integerIn(c, 'bolt');
  if (bolt === undefined || !at) return refused(reply('not-here', {}));
  const length = patternOf(job, at.step)?.fasteners.find((f) => f.number === bolt)?.length;
  return told(
    length
      ? reply('length-is', { bolt: count(bolt), length: quantity(length) })
      : reply('no-length', { bolt: count(bolt) }),
  );
}
