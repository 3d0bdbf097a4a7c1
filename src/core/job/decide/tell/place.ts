import { count, duration, type Reply, replies, reply, text } from '../../../phrasing/reply';
import { announce } from '../../announce';
import { openEnds } from '../../announce/ends';
import { nextBolt, whereIs } from '../../announce/fastener';
import { setWrench } from '../../announce/setting';
import { hazards } from '../../announce/step';
import { lastWorkDone } from '../../describe';
import type { Moment } from '../../entry';
import { holdOf } from '../../hold';
import type { Job } from '../../job';
import { workPlace } from '../../place';
import { stepIn } from '../../plan';
import { boltsLeft, expectedBolt } from '../../tightening';
import { isTimeAsked } from '../../time-gate';
import { timeLeft } from '../../timer';
import type { AtPass } from '../at-pass';

/** "Next" only tells. It never completes anything. */
export function tellNext(job: Job, at: AtPass | undefined, now: Moment): readonly Reply[] {
  const hold = holdOf(job);
  if (hold) return [reply('job-on-hold', { bolt: count(hold.bolt) })];
  if (isTimeAsked(job)) return announce(job, now);
  if (at && at.part === 'work') return nextBolt(job, at.step, at.pass);
  if (at && at.part === 'set') return setWrench(job, at.pass, now);
  return announce(job, now);
}

export function cautions(job: Job): readonly Reply[] {
  const at = workPlace(job);
  if (at.kind !== 'step' && at.kind !== 'pass') return [reply('no-caution-here', {})];
  const all = hazards(stepIn(job.plan, at.step).step);
  return all.length > 0 ? all : [reply('no-caution-here', {})];
}

export function place(job: Job, at: AtPass | undefined, now: Moment): readonly Reply[] {
  if (at && at.pass.kind !== 'wait') {
    const bolt = expectedBolt(at.pass, at.state);
    const left = boltsLeft(at.pass, at.state);
    if (bolt !== undefined)
      return [
        reply('place-in-pass', {
          pass: text(at.pass.say),
          number: count(at.passes.indexOf(at.pass) + 1),
          total: count(at.passes.length),
          done: count(at.pass.order.length - left),
          bolts: count(at.pass.order.length),
          bolt: count(bolt),
          where: text(whereIs(job, at.step, bolt)),
        }),
      ];
  }
  const work = workPlace(job);
  if (work.kind !== 'step') return announce(job, now);
  const { step, phase } = stepIn(job.plan, work.step);
  return [
    reply('place-in-step', {
      step: text(step.say),
      number: count(phase.steps.indexOf(step) + 1),
      total: count(phase.steps.length),
      phase: text(phase.say),
    }),
  ];
}

export function remaining(job: Job, at: AtPass | undefined): Reply {
  if (at && at.pass.kind !== 'wait')
    return reply('remaining-bolts', {
      left: count(boltsLeft(at.pass, at.state)),
      passes: count(at.passes.length - at.passes.indexOf(at.pass) - 1),
    });
  const work = workPlace(job);
  if (work.kind !== 'step' && work.kind !== 'pass')
    return reply('remaining-steps', { left: count(0), phase: text('') });
  const { phase, step } = stepIn(job.plan, work.step);
  return reply('remaining-steps', {
    left: count(phase.steps.length - phase.steps.indexOf(step)),
    phase: text(phase.say),
  });
}

/** Where, the last three, what is open, what is running, and the hazards of this step. */
export function brief(job: Job, at: AtPass | undefined, now: Moment): readonly Reply[] {
  const last = lastWorkDone(job, 3);
  return [
    ...place(job, at, now),
    ...(last.length > 0 ? [reply('last-done', { items: replies(last) })] : []),
    job.ends.size > 0 ? reply('loose-ends', { ends: openEnds(job.ends.values()) }) : reply('no-loose-ends', {}),
    ...(job.timers.size > 0 ? [timers(job, now)] : []),
    ...cautions(job).filter((r) => r.code !== 'no-caution-here'),
  ];
}

export function timers(job: Job, now: Moment): Reply {
  const all = [...job.timers.values()].map((t) => {
    const left = timeLeft(t, now);
    return left > 0
      ? reply('timer-running', { timer: text(t.say), left: duration(left) })
      : reply('timer-over', { timer: text(t.say) });
  });
  return all.length > 0 ? reply('timers-left', { timers: replies(all) }) : reply('no-timers', {});
}
