import { expect, test } from 'vitest';
import { howLong } from '../../../src/core/job/how-long';
import { passStatesOf } from '../../../src/core/job/place';
import { stepIn } from '../../../src/core/job/plan';
import { joint } from './joint';
import { atFirstPass, bolt, setAt, Workbench } from './workbench';

const minutes = (w: Workbench, step: string): number =>
  howLong(w.procedure, stepIn(w.job.plan, step).passes, passStatesOf(w.job, step)) / 60_000;

// Half a minute a bolt and a minute a pass (common practice, from memory), waits as the document has them, up to five.
test('of four passes over ten bolts: 20 and 4 minutes are about 25', () => {
  expect(minutes(atFirstPass(), 'tighten-left')).toBe(25);
});

test('what is done is not told again, and a wait of ten minutes counts until it is over', () => {
  const w = new Workbench(joint([{ torque: 30 }, { wait: 'settling' }, { torque: 60 }], 12));
  // 24 bolts 12 minutes, two wrenches set 2, the wait 10.
  expect(minutes(w, 'joint')).toBe(25);
  w.give(setAt(30));
  for (let n = 1; n <= 12; n++) w.give(bolt(n));
  // 12 bolts 6 minutes, one wrench 1, the wait 10.
  expect(minutes(w, 'joint')).toBe(20);
});
