import { count, replies, reply, text } from '../../phrasing/reply';
import { openEnds } from '../announce/ends';
import { type Command, optionIn } from '../command';
import { type Decision, does, refused } from '../decision';
import type { Moment } from '../entry';
import type { Job, LooseEnd } from '../job';
import { workPlace } from '../place';

/** Something back in its place out of turn. */
export function closeEnd(job: Job, c: Command): Decision {
  const id = optionIn(c, 'end');
  const end = id === undefined ? undefined : job.ends.get(id);
  if (id === undefined || !end || !canBeRefitted(end)) return refused(reply('not-here', {}));
  return does(
    [{ kind: 'end-closed', end: id, how: 'refitted', reason: '' }],
    [reply('end-closed', { what: text(end.what), left: count(job.ends.size - 1) })],
  );
}

/** What was lost is found, and what a dropped wrench did is signed for; a skipped step comes back by itself. */
export const canBeRefitted = (end: LooseEnd): boolean => end.why === 'step' || end.why === 'came-off';

/** Something the document did not foresee came off; it blocks the first start until it is back. */
export function cameOff(job: Job, c: Command): Decision {
  const id = optionIn(c, 'item');
  const spec = id === undefined ? undefined : job.plan.procedure.looseEnds.get(id);
  if (id === undefined || !spec || job.ends.has(id)) return refused(reply('not-here', {}));
  return does(
    [{ kind: 'end-opened', end: id, what: spec.say, blocks: spec.blocks, why: 'came-off' }],
    [reply('end-opened', { what: text(spec.say), milestone: replies([reply(`milestone-${spec.blocks}`, {})]) })],
  );
}

/** Something fell and was not found: not even turning the engine by hand is allowed until it is. */
export function droppedOne(job: Job, now: Moment): Decision {
  const id = `dropped-${(job.last?.seq ?? 0) + 1}-${now.session}`;
  return does(
    [{ kind: 'end-opened', end: id, what: '', blocks: 'turn-by-hand', why: 'dropped' }],
    [reply('dropped', {})],
  );
}

/** Finding closes the latest thing dropped, one at a time. */
export function foundIt(job: Job): Decision {
  const dropped = [...job.ends].filter(([, e]) => e.why === 'dropped').at(-1);
  if (!dropped) return refused(reply('found-nothing-lost', {}));
  const [id, end] = dropped;
  return does(
    [{ kind: 'end-closed', end: id, how: 'found', reason: '' }],
    [reply('end-closed', { what: openEnds([end]), left: count(job.ends.size - 1) })],
  );
}

/** A part that has to be got, from the parts the document knows. */
export function putOnList(job: Job, c: Command): Decision {
  const id = optionIn(c, 'part');
  const part = id === undefined ? undefined : job.plan.procedure.parts.get(id);
  if (!part) return refused(reply('not-here', {}));
  return does([{ kind: 'listed', part: part.id }], [reply('list-taken', { part: text(part.say) })]);
}

/** A second pair of eyes, by name. */
export function checkedBy(job: Job, c: Command): Decision {
  const person = optionIn(c, 'person');
  const place = workPlace(job);
  if (person === undefined || !job.people.includes(person) || (place.kind !== 'step' && place.kind !== 'pass'))
    return refused(reply('not-here', {}));
  return does([{ kind: 'checked-by', person, step: place.step }], [reply('checked-by', { person: text(person) })]);
}
