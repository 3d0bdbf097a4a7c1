import type { Offer } from '../language/grammar';
import type { RuleName } from './command';
import { commandAtCursor } from './cursor-command';
import { boltAt } from './decide/at-pass';
import { blocks } from './decide/bolt';
import { holdOf } from './hold';
import type { Job } from './job';
import { blockersOf } from './milestone';
import { offersOf } from './offers';
import { integers } from './offers/domains';
import { nextReading, placeOf } from './place';
import { stepIn } from './plan';
import { isTimeAsked } from './time-gate';

/**
 * The offers worth teaching, with the numbers of this moment in them: "bolt five done" where five is next. Left out is
 * what is only heard to be answered with what is missing, and a bare "done" where a bolt can be named.
 */
export function teachingOffers(job: Job): readonly Offer[] {
  const offers = offersOf(job).filter((o) => !isInVain(job, o.rule));
  const namesBolts = offers.some((o) => o.rule === 'bolt-done');
  return offers
    .filter((o) => !(namesBolts && (o.rule === 'done' || o.rule === 'clicked')))
    .map((o) => ({ ...o, slots: { ...o.slots, ...numbersNow(job, o.rule) } }));
}

/** The number of this moment, where there is one: of the bolt, the setting, or what is being read back. */
function numbersNow(job: Job, rule: string): Offer['slots'] {
  const q = job.pending;
  if (rule === 'mark-at' && q?.kind === 'mark') return { clock: integers([q.clock]) };
  if (rule === 'measured' && (q?.kind === 'reading' || q?.kind === 'floor')) {
    const decimals = String(q.value).split('.')[1]?.length ?? 0;
    const units = q.unit === undefined ? [] : [q.unit];
    return { reading: { kind: 'reading', least: q.value, most: q.value, decimals, units, unitNeeded: true } };
  }
  if (rule !== 'bolt-done' && rule !== 'set-at') return {};
  const [slot, value] = Object.entries(commandAtCursor(job, rule)?.slots ?? {})[0] ?? [];
  const number = value?.kind === 'integer' || value?.kind === 'reading' ? value.value : undefined;
  return slot === undefined || number === undefined || !Number.isInteger(number) ? {} : { [slot]: integers([number]) };
}

const REPORTS: ReadonlySet<string> = new Set<RuleName>(['bolt-done', 'bolts-done', 'so-far', 'past-by', 'clicked']);

function isInVain(job: Job, rule: string): boolean {
  const bolt = boltAt(job);
  if (REPORTS.has(rule) && bolt?.is.kind === 'done') return true;
  if (REPORTS.has(rule)) return holdOf(job) !== undefined || (bolt !== undefined && !job.pending && blocks(bolt));
  if (rule === 'close-job') return placeOf(job).kind !== 'closing';
  if (isTimeAsked(job) && (rule === 'set-at' || rule === 'next-pass-ready')) return true;
  return rule === 'done' && !endsSomething(job);
}

/** Whether "done" would end a step or a wait here, or at least might. */
function endsSomething(job: Job): boolean {
  const place = placeOf(job);
  if (place.kind === 'pass') return place.part === 'wait' || (place.part === 'work' && !holdOf(job));
  if (place.kind !== 'step') return false;
  const { step } = stepIn(job.plan, place.step);
  return !step.question && !nextReading(job, step.id) && blockersOf(job, step).length === 0;
}
