import { patternOf } from '../job/announce';
import { passAt } from '../job/decide/bolt';
import { holdOf } from '../job/hold';
import type { Job } from '../job/job';
import { boltState, expectedBolt, markDegrees } from '../job/tightening';
import { degrees, type Reply, reply, text } from '../phrasing/reply';
import type { FastenerMark, PatternDrawing, Swing } from './bench-view';

/** The casting with the fasteners of the pass, each as it stands; `show` puts the degrees of an angle into figures. */
export function drawingOf(job: Job, show: (replies: readonly Reply[]) => string): PatternDrawing | null {
  const at = passAt(job);
  const pattern = at ? patternOf(job, at.step) : undefined;
  if (!at || !pattern) return null;
  const next = at.part === 'work' ? expectedBolt(at.pass, at.state) : undefined;
  return {
    say: pattern.say,
    viewedFrom: pattern.viewedFrom,
    outline: pattern.outline,
    landmarks: pattern.landmarks,
    fasteners: pattern.fasteners.map((f) => {
      const turn = at.pass.order.indexOf(f.number);
      const state = boltState(at.state, f.number);
      const mark: FastenerMark = turn < 0 ? 'idle' : f.number === next && state.kind === 'open' ? 'next' : state.kind;
      const turned =
        turn >= 0 && state.kind === 'partial'
          ? show([reply('shown-degrees', { degrees: degrees(state.degrees) })])
          : '';
      return {
        number: f.number,
        at: f.at,
        mark,
        ...(turned ? { turned } : {}),
        turn: turn < 0 ? null : turn + 1,
        here: f.number === next,
      };
    }),
  };
}

/** How far the bolt at the cursor has to go, and where its mark starts and ends, unless something else is asked first. */
export function swingOf(job: Job, show: (replies: readonly Reply[]) => string): Swing | null {
  const at = passAt(job);
  if (at?.pass.kind !== 'angle' || at.part !== 'work' || holdOf(job) || job.pending) return null;
  const bolt = expectedBolt(at.pass, at.state);
  if (bolt === undefined) return null;
  const state = boltState(at.state, bolt);
  if (state.kind === 'done') return null;
  const turned = state.kind === 'partial' ? state.degrees : 0;
  const marks = markDegrees(at.passes, at.passes.indexOf(at.pass));
  const left = at.pass.degrees - turned;
  return {
    turned,
    left,
    fromHour: hour(marks.before),
    toHour: hour(marks.after),
    words: show([reply('shown-swing', { turned: turned > 0 ? degrees(turned) : text(''), left: degrees(left) })]),
  };
}

const hour = (clockwise: number): number => {
  const h = (clockwise / 30) % 12;
  return h === 0 ? 12 : h;
};
