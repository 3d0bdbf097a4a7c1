import type { Offer, SlotDomain } from '../../language/grammar';
import type { ReadingSpec, Step } from '../../procedure/procedure';
import type { Job } from '../job';
import { nextReading } from '../place';
import { maySkip } from '../skipping';
import { waitsOf } from '../waits';
import { checkedByOffer, offer, options } from './domains';
import { sumOffers } from './sums';

export function stepOffers(job: Job, step: Step): readonly Offer[] {
  const startable = waitsOf(step).some((id) => !job.timers.has(id));
  return [
    ...progress(job, step),
    ...(maySkip(job, step) ? [offer('skip-step')] : []),
    ...(startable ? [offer('start-timer')] : []),
    ...sumOffers(job),
    ...checkedByOffer(job),
  ];
}

function progress(job: Job, step: Step): readonly Offer[] {
  const reading = nextReading(job, step.id);
  if (step.kind === 'measure' && reading) return measuring(step, reading);
  const limit = step.kind === 'measure' && step.limit !== undefined ? [offer('tell-limit')] : [];
  if (step.question)
    return [
      ...limit,
      offer('answer', { answer: options(step.question.answers.map((a) => ({ id: a.id, say: a.say }))) }),
    ];
  return limit;
}

function measuring(step: Step & { readonly kind: 'measure' }, next: ReadingSpec): readonly Offer[] {
  const place = options(step.readings.map((r) => ({ id: r.id, say: [r.say] })));
  return [
    offer('measured', { reading: readingOf(next) }),
    ...(step.readings.length > 1 ? [offer('measured-at', { place, reading: readingOf(next) })] : []),
    offer('tell-limit'),
  ];
}

/** Only what can be true is heard: a reading in its plausible range, with its decimals and its unit. */
export const readingOf = (spec: ReadingSpec): SlotDomain => ({
  kind: 'reading',
  least: spec.least,
  most: spec.most,
  decimals: spec.decimals,
  units: [spec.unit],
  unitNeeded: false,
});
