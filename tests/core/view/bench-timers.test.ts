import { expect, test } from 'vitest';
import type { Job } from '../../../src/core/job/job';
import { stepIn } from '../../../src/core/job/plan';
import { waitsOf } from '../../../src/core/job/waits';
import { timersOf } from '../../../src/core/view/bench-timers';
import { shipped, Workbench } from '../job/workbench';

const MINUTE = 60_000;
/** A step asks for the first, none asks for the second, and both are begun far ahead of the first step. */
const ASKED = 'sealant-cure';
const ALONE = 'sealant-skin';

function started(...timers: readonly string[]): Workbench {
  const w = new Workbench(shipped('tarnbeck-head-gasket'));
  w.write(timers.map((timer) => ({ kind: 'timer-started', timer, ms: MINUTE })));
  return w;
}

const shown = (w: Workbench): readonly (readonly [string, boolean])[] =>
  timersOf(w.job, w.now()).map(({ say, over }) => [say, over] as const);
const say = ({ plan }: Job, timer: string): string => plan.procedure.timers.get(timer)?.say ?? expect.unreachable();

test('every wait that runs is shown', () => {
  const w = started(ASKED, ALONE);
  expect(shown(w)).toEqual([ASKED, ALONE].map((timer) => [say(w.job, timer), false]));
});

test('one that is over stays while a step ahead asks for it, and no longer', () => {
  const w = started(ASKED, ALONE);
  w.wait(2 * MINUTE);
  expect(shown(w)).toEqual([[say(w.job, ASKED), true]]);
  const asking = w.job.plan.order.filter((id) => waitsOf(stepIn(w.job.plan, id).step).includes(ASKED));
  expect(asking.length).toBeGreaterThan(0);
  w.write(asking.map((step) => ({ kind: 'step-done', step })));
  expect(shown(w)).toEqual([]);
});

test('one that nobody asks for stays until the step after its own is done', () => {
  const w = started();
  const { order } = w.job.plan;
  const begins = order.findIndex((id) => stepIn(w.job.plan, id).step.startsTimers.includes(ALONE));
  const isShown = () => shown(w).some(([one]) => one === say(w.job, ALONE));
  w.write(order.slice(0, begins + 1).map((step) => ({ kind: 'step-done', step })));
  w.wait(24 * 60 * MINUTE);
  expect(isShown()).toBe(true);
  const next = order.find((id) => !w.job.steps.has(id)) ?? expect.unreachable();
  w.write([{ kind: 'step-done', step: next }]);
  expect(isShown()).toBe(false);
});
