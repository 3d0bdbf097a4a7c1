import type { Offer } from '../../language/grammar';
import type { ReadingSpec, Step } from '../../procedure/procedure';
import type { Job } from '../job';
import { nextReading } from '../place';
import { readingDomain } from '../reading-units';
import { maySkip } from '../skipping';
import { waitsOf } from '../waits';
import { checkedByOffer, offer, options } from './domains';
import { estimateOffers } from './estimates';
import { sumOffers } from './sums';

export function stepOffers(job: Job, step: Step): readonly Offer[] {
  const startable = waitsOf(step).some((id) => !job.timers.has(id));
  return [
    ...progress(job, step),
    ...(maySkip(job, step) ? [offer('skip-step')] : []),
    ...(startable ? [offer('start-timer')] : []),
    ...sumOffers(job),
    ...estimateOffers(),
    ...checkedByOffer(job),
  ];
}

function progress(job: Job, step: Step): readonly Offer[] {
  const reading = nextReading(job, step.id);
  if (step.kind === 'measure' && reading) return [...readingOffers(step.readings, reading), offer('tell-limit')];
  const limit = step.kind === 'measure' && step.limit !== undefined ? [offer('tell-limit')] : [];
  if (step.question)
    return [
      ...limit,
      offer('answer', { answer: options(step.question.answers.map((a) => ({ id: a.id, say: a.say }))) }),
    ];
  return limit;
}

/** A reading of the one that is next, or of any whose place is named with it. */
export function readingOffers(all: readonly ReadingSpec[], next: ReadingSpec): readonly Offer[] {
  const place = options(all.map((r) => ({ id: r.id, say: [r.say] })));
  const reading = readingDomain(next);
  return [
    offer('measured', { reading }),
    offer('measured-at', { place, reading, gauged: { ...reading, unitNeeded: true, opens: true } }),
  ];
}
