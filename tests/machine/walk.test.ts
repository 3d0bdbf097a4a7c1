import { expect, test } from 'vitest';
import { offersOf } from '../../src/core/job/offers';
import { placeOf } from '../../src/core/job/place';
import { nodeOf } from '../../src/core/job/plan';
import { leavesOf, nodesOf } from '../../src/machine/nodes';
import { shipped } from '../core/job/workbench';
import { owed, type Sabotage, walk } from './walk';

// Reaching the limit makes the walk throw: a state space that has grown past it is looked at, not cut off.
const LIMIT = 200_000;

test.each(['tarnbeck-head-slice', 'practice-plate'])('%s: no way to closed with anything owed', (name) => {
  const { states, edges, broken } = walk(shipped(name), LIMIT);
  console.log(`${name}: ${states.length} states, ${edges} edges`);
  expect(broken).toEqual([]);
  const closed = states.filter((s) => s.job.status === 'closed');
  expect(closed.length).toBeGreaterThan(0);
  expect(closed.flatMap((s) => owed(s.job))).toEqual([]);
  for (const s of states) {
    expect(s.node).toBe(nodeOf(s.job.plan, placeOf(s.job)));
    const rules = new Set(offersOf(s.job).map((o) => o.rule));
    expect(rules.has('stop') && rules.has('say-again') && rules.has('tell-words')).toBe(true);
    if (!s.job.pending && s.job.status === 'open' && !s.job.paused) expect(rules.has('take-back')).toBe(true);
  }
  const first = states[0];
  if (!first) throw new Error('nothing walked');
  const reached = new Set(states.map((s) => s.node));
  const never = leavesOf(nodesOf(first.job.plan))
    .map((l) => l.id)
    .filter((id) => !reached.has(id));
  expect(never).toEqual([]);
});

// A check that cannot fail is no check: with a guard taken away the walk must find the hole.
const SABOTAGE: readonly [string, Sabotage][] = [
  [
    'a job closed with loose ends',
    (job, c) => (c.rule === 'close-job' && job.status === 'open' ? [{ kind: 'closed' }] : []),
  ],
  [
    'a hold point passed without its read-back',
    (job, c) => {
      const place = placeOf(job);
      return c.rule === 'done' && place.kind === 'step' && job.plan.steps.get(place.step)?.step.question
        ? [{ kind: 'step-done', step: place.step }]
        : [];
    },
  ],
  [
    'a held or unknown bolt called done',
    (job, c) => {
      const place = placeOf(job);
      const bolt = c.slots.bolt;
      return c.rule === 'bolt-done' &&
        place.kind === 'pass' &&
        place.part === 'work' &&
        bolt?.kind === 'integer' &&
        bolt.value < 99
        ? [{ kind: 'bolt-done', step: place.step, pass: place.pass, bolt: bolt.value, inOrder: true }]
        : [];
    },
  ],
];

test.each(SABOTAGE)('the walk finds %s', (_, sabotage) => {
  const { states, broken } = walk(shipped('tarnbeck-head-slice'), LIMIT, sabotage);
  const closed = states.filter((s) => s.job.status === 'closed');
  expect([...broken, ...closed.flatMap((s) => owed(s.job))]).not.toEqual([]);
});
