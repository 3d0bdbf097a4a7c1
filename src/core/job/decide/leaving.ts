import { clock, count, reply } from '../../phrasing/reply';
import { asks, type Decision, does, refused } from '../decision';
import type { EntryBody } from '../entry';
import { holdOf } from '../hold';
import type { Job } from '../job';
import { clockOf, markDegrees } from '../marks';
import { boltState } from '../tightening';
import { type AtPass, here, passAt } from './at-pass';

type Leaving = 'knock-off' | 'hand-over';

/**
 * Going home, or giving the job to somebody else. Not inside an angle pass with a bolt half turned or in doubt; and
 * with some turned and some not, only after every mark was looked at: tomorrow nobody knows.
 */
export function leave(job: Job, how: Leaving): Decision {
  const at = passAt(job);
  if (at && isHalfTurned(at) && !holdOf(job)) {
    const unsettled = at.pass.order.find((n) => {
      const { kind } = boltState(at.state, n);
      return kind === 'partial' || kind === 'unknown';
    });
    if (unsettled !== undefined) return refused(reply('bolt-is-in-doubt', { bolt: count(unsettled) }));
    const done = at.pass.order.filter((n) => boltState(at.state, n).kind === 'done').length;
    const { after } = markDegrees(at.passes, at.passes.indexOf(at.pass));
    return asks(
      [{ kind: 'asked', question: { kind: 'marks', ...here(at), leaving: how } }],
      reply('confirm-marks', { done: count(done), clock: clock(clockOf(after)) }),
    );
  }
  return how === 'knock-off'
    ? gone(how, [])
    : asks([{ kind: 'asked', question: { kind: 'hand-over' } }], reply('confirm-hand-over', {}));
}

const isHalfTurned = (at: AtPass): boolean =>
  at.pass.kind === 'angle' && at.part === 'work' && at.pass.order.some((n) => boltState(at.state, n).kind !== 'open');

export function gone(how: Leaving, before: readonly EntryBody[]): Decision {
  switch (how) {
    case 'knock-off':
      return does([...before, { kind: 'paused', why: 'knocked-off' }], [reply('knocked-off', {})]);
    case 'hand-over':
      return does([...before, { kind: 'handed-over' }], [], ['make-hand-over']);
  }
}
