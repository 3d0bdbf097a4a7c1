import { count, degrees, digits, reply } from '../../phrasing/reply';
import { echoBolt } from '../announce/fastener';
import { type Command, integerIn } from '../command';
import { type Decision, does, refused } from '../decision';
import type { EntryBody, Moment } from '../entry';
import type { Job } from '../job';
import { boltAt, here, passAt } from './at-pass';
import { whatBlocks } from './bolt';
import { faultEntry } from './fault';
import { readingFirst } from './floor';
import { after } from './settle';

/** Total degrees turned so far on the expected bolt. Over the window is a fault, inside it the bolt is done. */
export function soFar(job: Job, c: Command, now: Moment): Decision {
  const total = integerIn(c, 'degrees');
  return total === undefined ? refused(reply('not-here', {})) : turnedTo(job, total, now);
}

/** "Past by five": as far as the pass asks, and five degrees more. */
export function pastBy(job: Job, c: Command, now: Moment): Decision {
  const at = boltAt(job);
  const over = integerIn(c, 'degrees');
  if (at?.pass.kind !== 'angle' || over === undefined) return refused(reply('not-here', {}));
  return turnedTo(job, at.pass.degrees + over, now);
}

function turnedTo(job: Job, total: number, now: Moment): Decision {
  const at = boltAt(job);
  if (at?.pass.kind !== 'angle') return refused(reply('not-here', {}));
  const { bolt, pass, is } = at;
  if (is.kind === 'unknown' || is.kind === 'held') return refused(whatBlocks(at, bolt));
  if (is.kind === 'done') return refused(readingFirst(at, bolt) ?? reply('bolt-already-done', { bolt: count(bolt) }));
  const before = is.kind === 'partial' ? is.degrees : 0;
  if (total <= before) return refused(reply('angle-not-more', { degrees: degrees(before) }));
  const turn: EntryBody = { kind: 'bolt-turned', ...here(at), bolt, degrees: total };
  // Read back digit by digit: fifteen and fifty sound alike, and the one ends a bolt where the other does not.
  const heard = digits(total, 'deg');
  if (total > pass.window.most) {
    const { entry, replies } = faultEntry(job, at, 'went-past');
    return does([turn, entry], [reply('angle-heard', { degrees: heard }), ...replies]);
  }
  if (total < pass.window.least)
    return does([turn], [reply('angle-so-far', { degrees: heard, left: degrees(pass.degrees - total) })]);
  const first = readingFirst(at, bolt);
  if (first) return does([turn], [reply('angle-heard', { degrees: heard }), first]);
  const entries: readonly EntryBody[] = [turn, { kind: 'bolt-done', ...here(at), bolt, inOrder: true }];
  const echo = echoBolt(after(job, entries, now), at.step, pass, bolt);
  return does(entries, [reply('angle-heard', { degrees: heard }), ...echo]);
}

export function allMarked(job: Job): Decision {
  const at = passAt(job);
  if (at?.part !== 'mark') return refused(reply('not-here', {}));
  return does([{ kind: 'heads-marked', ...here(at) }], [reply('marked-taken', {})]);
}
