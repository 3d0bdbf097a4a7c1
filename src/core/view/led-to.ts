import { describe } from '../job/describe';
import { type Entry, isTalk } from '../job/entry';
import type { Plan } from '../job/plan';
import { type Reply, replies, reply } from '../phrasing/reply';

/** A glance has room for so many; the answer below tells of all. */
const MOST = 2;

/** What the words heard last did, in the past tense of the day-book; none where they changed nothing. */
export function ledTo(plan: Plan, entries: readonly Entry[]): readonly Reply[] {
  const heard = entries.findLastIndex(({ kind }) => kind === 'heard' || kind === 'rejected');
  const led = entries.slice(heard + 1).filter((entry) => !isTalk(entry));
  const told = led.map((entry) => (entry.kind === 'undone' ? takenBack(plan, entries, entry) : describe(plan, entry)));
  return told.slice(0, MOST);
}

/** By what it was, and not by the number of its line. */
function takenBack(plan: Plan, entries: readonly Entry[], undone: Entry & { readonly kind: 'undone' }): Reply {
  const target = entries.find(({ seq }) => seq === undone.target);
  return reply('taken-back', { what: replies([describe(plan, target ?? undone)]) });
}
