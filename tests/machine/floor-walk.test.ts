import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { checkDocument } from '../../src/cli/check-document';
import { offersOf } from '../../src/core/job/offers';
import { placeOf } from '../../src/core/job/place';
import type { Sabotage } from './driver';
import { owed, workOwed } from './owed';
import { stretchesOf } from './small-procedure';
import { walk } from './walk';

const LIMIT = 100_000;
const file = 'tests/cases/procedures/torque-floor.yaml';
const checked = checkDocument(readFileSync(file, 'utf8'), file);
if (!checked.ok) throw new Error(JSON.stringify(checked.error));
const [stretch] = stretchesOf(checked.value);
if (!stretch) throw new Error('nothing to walk');

// No shipped procedure has a pass with a floor.
test('a pass with a floor is not left with a torque unread, and every state has a way on', () => {
  const { states, broken } = walk(stretch, LIMIT);
  expect(broken).toEqual([]);
  expect(states.filter((s) => placeOf(s.job).kind === 'closing').flatMap((s) => workOwed(s.job))).toEqual([]);
  const closed = states.filter((s) => s.job.status === 'closed');
  expect(closed.length).toBeGreaterThan(0);
  expect(closed.flatMap((s) => owed(s.job))).toEqual([]);
  for (const { job } of states) expect(offersOf(job).map(({ rule }) => rule)).toContain('stop');
});

test('the walk finds a bolt called done with its torque unread', () => {
  const sabotage: Sabotage = (job, c) => {
    const place = placeOf(job);
    const bolt = c.slots['bolt'];
    if (c.rule !== 'bolt-done' || place.kind !== 'pass' || place.pass !== 'angle' || bolt?.kind !== 'integer')
      return [];
    return bolt.value < 99
      ? [{ kind: 'bolt-done', step: place.step, pass: place.pass, bolt: bolt.value, inOrder: true }]
      : [];
  };
  expect(walk(stretch, LIMIT, sabotage).broken).toContain('bolt done with its torque unread');
});
