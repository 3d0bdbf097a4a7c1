import type { Offer, SlotDomain } from '../../language/grammar';
import type { Job } from '../job';
import { coolantRule, sumStep } from '../sums';
import { offer } from './domains';

const number = (most: number, decimals: number, units: readonly string[], unitNeeded: boolean): SlotDomain => ({
  kind: 'reading',
  least: decimals > 0 ? 0.1 : 1,
  most,
  decimals,
  units,
  unitNeeded,
});

const SHARE = number(100, 0, ['%'], true);

/** Sums are asked for where they make sense: at the step that measures or fills, and just after it. */
export const sumOffers = (job: Job): readonly Offer[] => [
  ...(sumStep(job) ? [offer('tell-sum')] : []),
  ...(coolantRule(job)
    ? [
        offer('tell-freezing', { share: SHARE }),
        offer('tell-mix', { cold: number(70, 0, ['degC'], false) }),
        offer('tell-concentrate', { room: number(99, 1, ['L'], true), share: SHARE }),
      ]
    : []),
];
