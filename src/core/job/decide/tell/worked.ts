import { netTime, type Stretch } from '../../../measuring/labour-time';
import { duration, type Reply, reply } from '../../../phrasing/reply';
import type { Moment } from '../../entry';
import type { Job } from '../../job';

/** Working time so far: every session from its first entry to its last or to now, less its breaks. */
export function worked(job: Job, now: Moment): Reply {
  const sessions = new Map<string, { from: number; to: number; pausedAt: number | null; pauses: Stretch[] }>();
  let paused = false;
  for (const { kind, session, mono } of job.entries) {
    const one = sessions.get(session) ?? { from: mono, to: mono, pausedAt: paused ? mono : null, pauses: [] };
    sessions.set(session, one);
    one.to = mono;
    paused = kind === 'paused' || (paused && kind !== 'came-back');
    if (paused) one.pausedAt ??= mono;
    else if (one.pausedAt !== null) {
      one.pauses.push({ from: one.pausedAt, to: mono });
      one.pausedAt = null;
    }
  }
  let present = 0;
  let atWork = 0;
  for (const [session, one] of sessions) {
    const to = session === now.session ? now.mono : one.to;
    present += to - one.from;
    const open = one.pausedAt === null ? [] : [{ from: one.pausedAt, to }];
    atWork += netTime([{ from: one.from, to }], [...one.pauses, ...open]);
  }
  const breaks = duration(present - atWork);
  return reply('worked-time', { worked: duration(atWork), present: duration(present), breaks });
}
