import { GRADES } from '../../fastening/grade';
import { THREAD_NAMES } from '../../fastening/thread-names';
import type { Offer, SlotDomain } from '../../language/grammar';
import type { Pass, Step } from '../../procedure/procedure';
import { fastenedBy } from '../fastened-by';
import type { Job } from '../job';
import { isTorque } from '../setting';
import { named, offer } from './domains';

const TORQUE: SlotDomain = {
  kind: 'reading',
  least: 1,
  most: 400,
  decimals: 0,
  units: ['N·m', 'lbf·ft', 'lbf·in'],
  unitNeeded: true,
};

const SHARE: SlotDomain = { kind: 'reading', least: 1, most: 100, decimals: 0, units: ['%'], unitNeeded: true };

/** Rough sums about any fastener: asked for between the work, and never among bolts, where numbers must not multiply. */
export function estimateOffers(): readonly Offer[] {
  const bolt = { thread: named(THREAD_NAMES), grade: named(GRADES) };
  return [
    offer('tell-estimate', { ...bolt, share: SHARE }),
    offer('tell-proof', bolt),
    offer('tell-tension', { ...bolt, setting: TORQUE }),
  ];
}

/** What the figure of a pass does to its own fasteners, where the document tells their thread. */
export function pullOffers(job: Job, step: Step, pass: Pass): readonly Offer[] {
  if (!fastenedBy(job, step, pass)) return [];
  if (isTorque(pass)) return [offer('tell-pull')];
  return pass.kind === 'angle' ? [offer('tell-stretch')] : [];
}
