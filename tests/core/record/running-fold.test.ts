import { describe, expect, test, vi } from 'vitest';
import type { Entry } from '../../../src/core/job/entry';
import { planOf } from '../../../src/core/job/plan';
import { endsLedger } from '../../../src/core/record/ends-ledger';
import { runningFold } from '../../../src/core/record/running-fold';
import { standing } from '../../../src/core/record/standing';
import { workFold } from '../../../src/core/record/work-times';
import { longRecord } from '../../screens/long-record';
import { shipped } from '../job/workbench';

const named = (...names: readonly string[]): readonly Entry[] => names.map((name) => entries[name] ?? fail(name));
const fail = (name: string): never => {
  throw new Error(name);
};
const entries: Readonly<Record<string, Entry>> = Object.fromEntries(
  ['a', 'b', 'c', 'd'].map((who, i) => [
    who,
    { kind: 'came-back', seq: i + 1, at: i, mono: i, session: 's', who } satisfies Entry,
  ]),
);

describe('a fold over a log that grows', () => {
  const step = vi.fn((told: string, { who }: Entry) => told + who);

  test.each([
    { what: 'goes on where it stopped', first: ['a', 'b'], now: ['a', 'b', 'c'], steps: 1, told: 'abc' },
    { what: 'has nothing to do for the same log', first: ['a', 'b'], now: ['a', 'b'], steps: 0, told: 'ab' },
    {
      what: 'begins anew where an entry was taken out',
      first: ['a', 'b', 'c'],
      now: ['a', 'c', 'd'],
      steps: 3,
      told: 'acd',
    },
    { what: 'begins anew where the last was taken out', first: ['a', 'b'], now: ['a', 'd'], steps: 2, told: 'ad' },
    { what: 'begins anew for a shorter log', first: ['a', 'b'], now: ['a'], steps: 1, told: 'a' },
    { what: 'begins with the first entry there is', first: [], now: ['d'], steps: 1, told: 'd' },
  ])('$what', ({ first, now, steps, told }) => {
    const follow = runningFold(() => '', step);
    follow(named(...first));
    step.mockClear();
    expect(follow(named(...now))).toBe(told);
    expect(step).toHaveBeenCalledTimes(steps);
  });
});

test('asked after every few entries of a long job, it tells what it tells of the whole', () => {
  const procedure = shipped('tarnbeck-head-gasket');
  const plan = planOf(procedure);
  const file: { readonly entries: readonly string[] } = JSON.parse(longRecord(1500).text);
  const log = file.entries.map((text): Entry => JSON.parse(text));
  const [work, ends] = [workFold(plan), endsLedger(plan)];
  for (let many = 0; many < log.length; many += 37) {
    work(log.slice(0, many));
    ends(standing(log.slice(0, many)));
  }
  expect(work(log).stretches).toEqual(workFold(plan)(log).stretches);
  expect(ends(standing(log))).toEqual(endsLedger(plan)(standing(log)));
});
