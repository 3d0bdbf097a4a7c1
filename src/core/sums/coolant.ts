import { type Celsius, type Litres, type Percent, percent } from '../fastening/quantity';
import { type MixError, topUp } from '../measuring/coolant-mix';
import { type CoolantTable, freezingPoint, freezingWorking, shareFor } from '../measuring/coolant-table';
import { type Reply, reply, terms } from '../phrasing/reply';
import type { Answer, CoolantRule, RuleName } from './rule';
import { figure, workedBy } from './worked';

export type Filling = {
  readonly capacity: Litres;
  readonly wanted: Percent;
  readonly concentrate: Percent;
  /** What the rest of the system still holds, where the document can tell. */
  readonly present: Percent | null;
  readonly table: CoolantTable;
};

/** The questions about a coolant: what a mix protects to, the mix for a cold, and what goes into the room there is. */
export function coolantSum(rule: RuleName, filling: Filling): CoolantRule {
  const { table } = filling;
  const outside = [reply('sum-outside-table', {})];
  const answer = (share: Percent, cold: Celsius): Answer => {
    const working = freezingWorking(table, share);
    const slots = { share: figure(share, '%', 0), cold: figure(cold, 'degC', 0) };
    return [reply('sum-freezes', slots), ...(working ? [workedBy(rule, working, undefined, terms(table.source))] : [])];
  };
  return {
    ...rule,
    kind: 'coolant',
    freezing: (share) => {
      const cold = freezingPoint(table, share);
      return cold.ok ? answer(share, cold.value) : outside;
    },
    mixFor: (cold) => {
      const share = shareFor(table, cold);
      return share.ok ? answer(percent(Math.ceil(share.value - 1e-9)), cold) : outside;
    },
    concentrate: (room, told) => {
      const present = told ?? filling.present ?? (room >= filling.capacity ? percent(0) : null);
      return present === null ? [reply('sum-needs-share', {})] : filled(rule, filling, room, present);
    },
  };
}

function filled(rule: RuleName, { capacity, wanted, concentrate }: Filling, room: Litres, present: Percent): Answer {
  const found = topUp(capacity, room, { present, wanted, concentrate });
  if (!found.ok) return [refused(found.error)];
  return [
    reply('sum-concentrate', {
      concentrate: figure(found.value.concentrate, 'L', 1),
      water: figure(found.value.water, 'L', 1),
      share: figure(wanted, '%', 0),
    }),
    workedBy(rule, found.value.working),
  ];
}

function refused(error: MixError): Reply {
  switch (error.code) {
    case 'already-there':
      return reply('sum-strong-enough', {});
    case 'drain-more':
      return reply('sum-drain-more', { value: figure(error.needed, 'L', 1) });
    case 'drained-more-than-held':
      return reply('sum-too-much-room', { value: figure(error.capacity, 'L', 1) });
    case 'not-positive':
    case 'share-out-of-range':
    case 'concentrate-too-weak':
      return reply('sum-not-possible', {});
  }
}
