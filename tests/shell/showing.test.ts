import { expect, test } from 'vitest';
import { SHOWING, type ShowingRule } from '../../src/core/job/command';
import { performEffect } from '../../src/shell/errands';
import type { Rooms } from '../../src/shell/rooms';

/** What is done for an effect, in order, with a job open that stands so. */
async function done(effect: ShowingRule, status: 'open' | 'closed'): Promise<readonly string[]> {
  const acts: string[] = [];
  const act = (what: string) => async () => void acts.push(what);
  const open = { desk: { job: { status }, idle: act('idle') } };
  const rooms = { seat: { open, leave: act('leave') } } as unknown as Rooms;
  await performEffect(effect, rooms, { faster: () => undefined, show: (rule) => act(rule)() });
  return acts;
}

test.each(SHOWING)('%s shows its screen and leaves an open job where it is', async (rule) => {
  expect(await done(rule, 'open')).toEqual([rule]);
});

test.each<ShowingRule>(['show-jobs', 'show-procedures'])(
  'a closed job is left for %s once its answer is written, so that the next one can be begun by voice',
  async (rule) => {
    expect(await done(rule, 'closed')).toEqual(['idle', 'leave', rule]);
  },
);

test.each<ShowingRule>(['show-bench', 'show-record', 'show-card'])('a closed job stays for %s', async (rule) => {
  expect(await done(rule, 'closed')).toEqual([rule]);
});
