import type { Offer } from '../language/grammar';
import { commandAtCursor } from './cursor-command';
import type { Job } from './job';
import { offersOf } from './offers';

/**
 * The offers with the numbers of this moment in them, for example sentences: "bolt five done" where five is next.
 * A bare "done" is not taught where a bolt can be named, and closing up early is not the first thing to suggest.
 */
export function teachingOffers(job: Job): readonly Offer[] {
  const offers = offersOf(job);
  const namesBolts = offers.some((o) => o.rule === 'bolt-done');
  return offers
    .filter((o) => !(namesBolts && (o.rule === 'done' || o.rule === 'clicked')))
    .map((o) => {
      if (o.rule !== 'bolt-done' && o.rule !== 'set-at') return o;
      const [slot, value] = Object.entries(commandAtCursor(job, o.rule)?.slots ?? {})[0] ?? [];
      const number = value?.kind === 'integer' || value?.kind === 'reading' ? value.value : undefined;
      if (slot === undefined || number === undefined || !Number.isInteger(number)) return o;
      return { ...o, slots: { ...o.slots, [slot]: { kind: 'integers', values: [number] } } };
    });
}
