import type { AdapterOn } from '../adapter';
import type { Entry } from '../entry';
import type { Job } from '../job';
import { stepIn } from '../plan';
import { isComplete, type PassStates, passState, withPass } from '../tightening';
import { withEnd, withoutEnds } from './ends';

/** The loose end of a dropped wrench, by the tool the document names. */
const droppedEnd = (tool: string): string => `wrench/${tool}`;

/** What the wrench in hand is set at no longer counts where the wrench or what is on it has changed. */
function settingsAnew(job: Job): Job {
  const tightening = new Map<string, PassStates>();
  for (const [step, states] of job.tightening) {
    const unfinished = stepIn(job.plan, step).passes.filter((pass) => !isComplete(pass, passState(states, pass.id)));
    tightening.set(
      step,
      unfinished.reduce((s, pass) => withPass(s, pass.id, { setting: null }), states),
    );
  }
  return { ...job, tightening };
}

export const adapterTo = (job: Job, adapter: AdapterOn | null): Job => settingsAnew({ ...job, adapter, pending: null });

/**
 * Another wrench ends the doubt about what comes; what the dropped one tightened stays in doubt, so its loose end goes
 * only where it tightened nothing.
 */
export function wrenchChosen(job: Job, { tool, wrench }: Entry & { readonly kind: 'wrench-chosen' }): Job {
  const dropped = new Set(job.dropped);
  dropped.delete(tool);
  const next = settingsAnew({ ...job, wrenches: new Map(job.wrenches).set(tool, wrench), dropped });
  return anyDoubtful(job) ? next : withoutEnds(next, [droppedEnd(tool)]);
}

const anyDoubtful = (job: Job): boolean =>
  [...job.tightening.values()].some((states) =>
    [...states.values()].some((s) => [...s.bolts.values()].some((b) => b.kind === 'done' && b.doubtful)),
  );

/** Nothing is to run before somebody has signed that what the wrench tightened since is good. */
export function wrenchDropped(job: Job, { tool }: Entry & { readonly kind: 'wrench-dropped' }): Job {
  const inHand = job.wrenches.get(tool);
  const what = inHand?.say ?? job.plan.procedure.tools.get(tool)?.say ?? tool;
  const dropped = new Set(job.dropped).add(tool);
  const fallen = inHand ? new Set(job.fallen).add(inHand.id) : job.fallen;
  return withEnd({ ...job, dropped, fallen }, droppedEnd(tool), { what, blocks: 'first-start', why: 'wrench' });
}
