import type { Offer } from '../../language/grammar';
import type { Job } from '../job';
import type { Pending } from '../pending';
import { passIn, stepIn } from '../plan';
import { integers, LENGTH, offer, range, TURNED } from './domains';
import { doubt, floorOffers } from './pass';
import { readingOffers } from './step';

const CONFIRM: readonly Offer[] = [offer('confirm'), offer('cancel')];

/** The answers to an open question. A value or a bolt that was read back can be said again, or put right. */
export function pendingOffers(job: Job, pending: Pending): readonly Offer[] {
  switch (pending.kind) {
    case 'turned-or-not':
      return [offer('turned'), offer('not-turned')];
    case 'which-bolt':
    case 'out-of-order': {
      const pass = passIn(job.plan, pending.step, pending.pass);
      const again = offer('bolt-done', { bolt: integers(pass.order) });
      return pending.kind === 'which-bolt' ? [again, offer('cancel'), ...doubt(pass)] : [again, ...CONFIRM];
    }
    case 'reading': {
      const { step } = stepIn(job.plan, pending.step);
      const spec = step.kind === 'measure' ? step.readings.find((r) => r.id === pending.reading) : undefined;
      return [...(spec ? readingOffers([spec], spec) : []), ...CONFIRM];
    }
    case 'floor':
      return [...floorOffers(passIn(job.plan, pending.step, pending.pass)), ...CONFIRM];
    case 'mark':
      return [offer('mark-at', { clock: integers(range(1, 12, 1)) }), ...CONFIRM];
    case 'adapter':
      return [
        ...(pending.millimetres === null ? [] : [offer('adapter-on', { length: LENGTH, degrees: TURNED })]),
        ...CONFIRM,
      ];
    case 'skip-step':
    case 'sign-off':
    case 'override-order':
    case 'held-bolt':
    case 'repeat-pass':
    case 'slacken-all':
    case 'marks':
    case 'close-job':
    case 'hand-over':
      return CONFIRM;
  }
}
