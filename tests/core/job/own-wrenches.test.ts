import { describe, expect, test } from 'vitest';
import { millimetres } from '../../../src/core/fastening/quantity';
import type { Wrench } from '../../../src/core/fastening/wrench';
import { chooseWrench } from '../../../src/core/job/decide/wrench';
import { ownWrenches } from '../../../src/core/job/own-wrenches';
import { settingOf } from '../../../src/core/job/setting';
import { joint } from './joint';
import { bolt, codes, setAt, Workbench } from './workbench';

const wrench = (id: string, least: number, most: number, change: Partial<Wrench> = {}): Wrench => ({
  id,
  say: `wrench ${id}`,
  unit: 'N·m',
  least,
  most,
  graduation: 1,
  dropped: false,
  ...change,
});

const job = () => new Workbench(joint([{ torque: 30 }, { torque: 60 }]));
const chosenFor = (w: Workbench, owned: readonly Wrench[]) => ownWrenches(w.job, owned).map((c) => c.wrench.id);

function choose(w: Workbench, owned: readonly Wrench[]): void {
  for (const { tool, wrench: one } of ownWrenches(w.job, owned))
    w.write(chooseWrench(w.job, tool, one, w.now()).entries);
}

describe('the wrench out of Setup for a tool of the document', () => {
  // A click wrench is good from 20 % of its scale up (ISO 6789-1; common practice): 30 N·m is too low on one to 200.
  test.each([
    ['is the smallest that can be set for every pass', [wrench('big', 0, 140), wrench('fit', 0, 100)], ['fit']],
    ['is none that is too small for one of them', [wrench('small', 5, 50)], []],
    ['is none that is too large for one of them', [wrench('huge', 0, 200)], []],
    ['is none where Setup has none', [], []],
  ])('%s', (_, owned, wanted) => {
    expect(chosenFor(job(), owned)).toEqual(wanted);
  });

  test('gives its settings, and is chosen once', () => {
    const w = job();
    const mine = [wrench('fit', 0, 100, { unit: 'lbf·ft', lever: millimetres(300) })];
    choose(w, mine);
    const pass = w.job.plan.steps.get('joint')?.passes[0];
    if (pass?.kind !== 'torque') return expect.unreachable();
    // 30 N·m / 1.3558 = 22.1 lbf·ft (NIST SP 811).
    expect(settingOf(w.job, pass)).toMatchObject({ kind: 'set', set: { value: 22, unit: 'lbf·ft' } });
    expect(chosenFor(w, mine)).toEqual([]);
  });

  test('learns a new calibration from Setup, and is not changed for a better one inside the job', () => {
    const w = job();
    choose(w, [wrench('fit', 0, 140)]);
    const renewed = wrench('fit', 0, 140, { calibrationDue: '2027-01-31' });
    expect(chosenFor(w, [renewed, wrench('better', 0, 100)])).toEqual(['fit']);
  });

  test('stays in doubt when it was dropped, whatever Setup says', () => {
    const w = job();
    choose(w, [wrench('fit', 0, 140)]);
    w.all(setAt(30), bolt(1), 'dropped-wrench');
    expect(chosenFor(w, [wrench('fit', 0, 140, { calibrationDue: '2027-01-31' })])).toEqual([]);
  });

  test('is told when it is chosen before the setting was given', () => {
    const w = job();
    const [choice] = ownWrenches(w.job, [wrench('fit', 0, 100, { calibrationDue: '2099-01-31' })]);
    if (!choice) return expect.unreachable();
    expect(codes(chooseWrench(w.job, choice.tool, choice.wrench, w.now()))).toEqual(['wrench-chosen', 'set-wrench']);
  });
});
