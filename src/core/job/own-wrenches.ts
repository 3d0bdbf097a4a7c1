import type { Wrench } from '../fastening/wrench';
import type { ChosenWrench } from './chosen-wrench';
import type { EntryBody } from './entry';
import { bySize, settingWith } from './fitting-wrenches';
import type { Job } from './job';
import { isTorque, type TorquePass } from './setting';

export type WrenchChoice = { readonly tool: string; readonly wrench: ChosenWrench };

/**
 * Which of the owner's wrenches stands for which torque tool of the document: the smallest that can be set for every
 * pass of it, unless one was chosen in this job, which only learns what Setup has learnt about it. A dropped one is left
 * alone: to choose it again would lift the doubt.
 */
export function ownWrenches(job: Job, owned: readonly Wrench[]): readonly WrenchChoice[] {
  if (job.status !== 'open') return [];
  const all = owned.map(chosenFrom);
  return [...passesByTool(job)].flatMap(([tool, passes]) => {
    const chosen = job.wrenches.get(tool);
    const fitting = chosen
      ? all.filter(({ id }) => id === chosen.id)
      : all.filter((wrench) => passes.every((pass) => canBeSet(job, pass, wrench))).sort(bySize);
    const [wrench] = fitting;
    if (!wrench || job.dropped.has(tool) || isSame(wrench, chosen)) return [];
    return [{ tool, wrench }];
  });
}

/** What the job has to be told of the wrenches there are: nothing while it knows them as they are. */
export function ownedAnew(
  job: Job,
  owned: readonly Wrench[],
): readonly (EntryBody & { readonly kind: 'wrenches-owned' })[] {
  const wrenches = owned.map(chosenFrom);
  const isKnown = wrenches.length === job.owned.length && wrenches.every((one, i) => isSame(one, job.owned[i]));
  return job.status !== 'open' || isKnown ? [] : [{ kind: 'wrenches-owned', wrenches }];
}

function passesByTool(job: Job): ReadonlyMap<string, readonly TorquePass[]> {
  const found = new Map<string, TorquePass[]>();
  for (const { passes } of job.plan.steps.values())
    for (const pass of passes)
      if (isTorque(pass) && pass.tool !== undefined) found.set(pass.tool, [...(found.get(pass.tool) ?? []), pass]);
  return found;
}

const canBeSet = (job: Job, pass: TorquePass, wrench: ChosenWrench): boolean =>
  settingWith(job, pass, wrench, null).kind === 'set';

/** The log keeps its fields in an order of its own. */
const isSame = (a: ChosenWrench, b: ChosenWrench | undefined): boolean =>
  b !== undefined &&
  a.id === b.id &&
  a.say === b.say &&
  a.unit === b.unit &&
  a.least === b.least &&
  a.most === b.most &&
  a.graduation === b.graduation &&
  a.lever === b.lever &&
  a.calibrationDue === b.calibrationDue;

const chosenFrom = (wrench: Wrench): ChosenWrench => ({
  id: wrench.id,
  say: wrench.say,
  unit: wrench.unit,
  least: wrench.least,
  most: wrench.most,
  graduation: wrench.graduation,
  lever: wrench.lever ?? null,
  calibrationDue: wrench.calibrationDue ?? null,
});
