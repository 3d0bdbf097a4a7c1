import type { Offer, SlotDomain } from '../../language/grammar';
import { MANNERS, type RuleName } from '../command';
import type { Job } from '../job';

export const offer = (rule: RuleName, slots: Readonly<Record<string, SlotDomain>> = {}): Offer => ({
  rule,
  manner: MANNERS[rule],
  slots,
});

export const options = (all: readonly { readonly id: string; readonly say: readonly string[] }[]): SlotDomain => ({
  kind: 'options',
  options: all,
});

export const named = (ids: readonly string[]): SlotDomain => ({ kind: 'named', ids });

export const integers = (values: readonly number[]): SlotDomain => ({ kind: 'integers', values });

export const range = (from: number, to: number, step: number): readonly number[] =>
  Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, i) => from + i * step);

/** An adapter's length is said with its unit, to a hundredth of an inch. */
export const LENGTH: SlotDomain = {
  kind: 'reading',
  least: 0.25,
  most: 300,
  decimals: 2,
  units: ['in', 'mm'],
  unitNeeded: true,
};

/** How far an adapter stands off straight ahead, to a clock's quarter hour. */
export const TURNED: SlotDomain = { kind: 'integers', values: range(15, 180, 15) };

/** The parts the document knows, any of which may be found wanting. */
export function partsOffer(job: Job): readonly Offer[] {
  const parts = [...job.plan.procedure.parts.values()];
  if (parts.length === 0) return [];
  return [offer('add-to-list', { part: options(parts.map((p) => ({ id: p.id, say: [p.say] }))) })];
}

/** A second person, by a name the job was given. */
export const checkedByOffer = (job: Job): readonly Offer[] =>
  job.people.length === 0
    ? []
    : [offer('checked-by', { person: options(job.people.map((name) => ({ id: name, say: [name] }))) })];
