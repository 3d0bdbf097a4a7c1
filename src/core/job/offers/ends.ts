import type { Offer } from '../../language/grammar';
import { canBeRefitted } from '../decide/ends';
import type { Job, LooseEnd } from '../job';
import { named, offer, options } from './domains';

/** Reasons a debt may be signed off with, by id; the language gives their words. */
const REASONS = ['not-fitted-here', 'waiting-for-a-part', 'tested-another-way', 'owner-decided'] as const;

/** What a person fitted back out of turn, took off out of turn, or signs off with a reason. */
export function endOffers(job: Job): readonly Offer[] {
  const open = [...job.ends];
  const refittable = namesOf(open.filter(([, e]) => canBeRefitted(e)));
  // A lost part has no name to be signed off by, and nobody signs for it: it is found.
  const signable = namesOf(open.filter(([, e]) => e.why !== 'dropped'));
  const fitted = [...job.plan.procedure.looseEnds.values()].filter((spec) => !job.ends.has(spec.id));
  return [
    ...(refittable.length > 0 ? [offer('end-closed', { end: options(refittable) })] : []),
    ...(signable.length > 0 ? [offer('sign-off', { end: options(signable), reason: named(REASONS) })] : []),
    ...(fitted.length > 0
      ? [offer('came-off', { item: options(fitted.map((spec) => ({ id: spec.id, say: [spec.say] }))) })]
      : []),
  ];
}

const namesOf = (ends: readonly (readonly [string, LooseEnd])[]) =>
  ends.map(([id, e]) => ({ id, say: [firstSentence(e.what)] }));

/** A skipped step is named by the beginning of what it says. */
const firstSentence = (what: string): string => what.split(/[.;!?]/)[0]?.trim() || what;
