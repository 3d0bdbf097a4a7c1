import type { Offer } from '../language/grammar';
import { type RuleName, SHOWING } from './command';
import { WHILE_ON_HOLD } from './decide/decide';
import { holdOf } from './hold';
import type { Job } from './job';
import { offer, partsOffer } from './offers/domains';
import { endOffers } from './offers/ends';
import { passOffers } from './offers/pass';
import { pendingOffers } from './offers/pending';
import { stepOffers } from './offers/step';
import { placeOf } from './place';
import { passIn, stepIn } from './plan';

/** Everything that makes sense to say in this job now. The recogniser can hear nothing else. */
export function offersOf(job: Job): readonly Offer[] {
  // Other screens last: what is taught and tried of the work keeps its order.
  const all = [...offersHere(job), ...rules(SHOWING)];
  return holdOf(job) && !job.paused ? all.filter((o) => isAllowedOnHold(o)) : all;
}

function offersHere(job: Job): readonly Offer[] {
  if (job.pending) return [...rules(ALWAYS, ASKING, KEEPING, ['hold-on']), ...pendingOffers(job, job.pending)];
  const place = placeOf(job);
  switch (place.kind) {
    case 'step': {
      const { step } = stepIn(job.plan, place.step);
      return [...common(job), ...rules(AT_STEPS), ...endOffers(job), ...partsOffer(job), ...stepOffers(job, step)];
    }
    case 'pass': {
      const { step } = stepIn(job.plan, place.step);
      return [
        ...common(job),
        ...rules(AT_WORK),
        ...(holdOf(job) ? partsOffer(job) : []),
        ...passOffers(job, step, passIn(job.plan, place.step, place.pass), place.part),
      ];
    }
    case 'paused':
      return rules(ALWAYS, ASKING, KEEPING, ['im-back']);
    case 'closing':
      return [...common(job), ...endOffers(job), offer('close-job')];
    case 'closed':
      return rules(ALWAYS, ['tell-list']);
  }
}

const rules = (...lists: readonly (readonly RuleName[])[]): readonly Offer[] => lists.flat().map((r) => offer(r));

const ALWAYS: readonly RuleName[] = ['stop', 'say-again', 'tell-words', 'ears-off', 'ears-on', 'slower', 'faster'];
const ASKING: readonly RuleName[] = ['tell-place', 'tell-loose-ends', 'tell-timers', 'tell-brief'];
/** What is only kept beside the work: it answers no question and ends no break. */
const KEEPING: readonly RuleName[] = ['take-note', 'take-picture'];
const WORKING: readonly RuleName[] = [
  'tell-next',
  'tell-remaining',
  'tell-caution',
  'tell-list',
  'take-back',
  'hold-on',
  'knocking-off',
  'dropped-one',
  'terse',
  'full',
  'hand-over',
];
/** "Done" is heard wherever there is work, if only to be answered with what is missing. */
const AT_WORK: readonly RuleName[] = ['done'];
/** Closing is heard at every step, to be answered with what still blocks it. */
const AT_STEPS: readonly RuleName[] = [...AT_WORK, 'tell-tool', 'tell-worked', 'close-job'];

function common(job: Job): readonly Offer[] {
  const lost = [...job.ends.values()].some((e) => e.why === 'dropped');
  return rules(ALWAYS, ASKING, WORKING, KEEPING, lost ? ['found-it'] : []);
}

/** Asking and breaking off are always allowed; of the work what settles the broken bolt, and what is refused in words. */
const isAllowedOnHold = ({ rule, manner }: Offer): boolean =>
  manner === 'harmless' || manner === 'stop' || ON_HOLD.has(rule);

const ON_HOLD: ReadonlySet<string> = new Set([
  ...WHILE_ON_HOLD,
  'done',
  'bolt-done',
  'hold-on',
  'knocking-off',
  ...KEEPING,
  'ears-off',
  'ears-on',
]);
