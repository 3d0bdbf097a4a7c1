import { describe, expect, test } from 'vitest';
import type { ChosenWrench } from '../../../src/core/job/chosen-wrench';
import type { EntryBody } from '../../../src/core/job/entry';
import { doubtsOf, isSetRight, isTorque, settingOf } from '../../../src/core/job/setting';
import type { Pass } from '../../../src/core/procedure/procedure';
import { joint } from './joint';
import { Workbench } from './workbench';

const wrench = (change: Partial<ChosenWrench> = {}): ChosenWrench => ({
  id: 'w',
  say: 'long wrench',
  unit: 'N·m',
  least: 0,
  most: 200,
  graduation: 1,
  lever: 300,
  calibrationDue: '2026-06-30',
  ...change,
});

function set(target: Extract<Pass, { kind: 'torque' }>['target'], ...entries: readonly EntryBody[]) {
  const base = joint([{ torque: target.value }]);
  const [phase] = base.phases;
  const [step] = phase?.steps ?? [];
  const pass = step?.kind === 'tighten' ? step.passes[0] : undefined;
  if (!pass || !isTorque(pass)) throw new Error('no torque pass');
  const w = new Workbench(base);
  w.write(entries);
  return { setting: settingOf(w.job, { ...pass, target }), w, pass };
}

const NM = (value: number) => ({ printed: `${value} N·m`, value, unit: 'N·m' as const });
const chosen = (w: ChosenWrench): EntryBody => ({ kind: 'wrench-chosen', tool: 'wrench', wrench: w });

type Row = readonly [string, Parameters<typeof set>[0], readonly EntryBody[], number, string, string];

describe('what is set for a torque', () => {
  test.each<Row>([
    ['as printed where no wrench is known', NM(30), [], 30, 'N·m', 'the document'],
    ['the same with a wrench in its unit', NM(50), [chosen(wrench())], 50, 'N·m', 'no adapter, no change'],
    [
      'the pair the document prints for a wrench in the other unit',
      { ...NM(30), also: [{ printed: '22 lbf·ft', value: 22, unit: 'lbf·ft' as const }] },
      [chosen(wrench({ unit: 'lbf·ft', most: 100 }))],
      22,
      'lbf·ft',
      'the document, never re-computed',
    ],
    [
      'converted and rounded to a mark where no pair is printed',
      NM(50),
      [chosen(wrench({ unit: 'lbf·ft', most: 100 }))],
      37,
      'lbf·ft',
      '50 / 1.355818 = 36.9',
    ],
    [
      'lowered by an adapter straight ahead',
      NM(60),
      [chosen(wrench()), { kind: 'adapter-on' as const, millimetres: 150, degrees: 0 }],
      40,
      'N·m',
      'S = T · L / (L + E), 60 · 300 / 450; US Army TM 9-254',
    ],
    [
      'the inch example',
      { printed: '100 lbf·in', value: 100, unit: 'lbf·in' as const },
      [
        chosen(wrench({ unit: 'lbf·in', most: 150, graduation: 0.1, lever: 304.8 })),
        { kind: 'adapter-on' as const, millimetres: 152.4, degrees: 0 },
      ],
      66.7,
      'lbf·in',
      'L 12 in, E 6 in: a naval training course, 66.7',
    ],
  ])('%s', (_, target, entries, value, unit) => {
    const { setting } = set(target, ...entries);
    expect(setting).toMatchObject({ kind: 'set', set: { value, unit } });
  });

  // A 150 lbf·ft wrench is used from a fifth of its scale on: 95 lbf·in is 5.3 %, 30 is 20 %, 65 is 43 %.
  test.each([
    ['95 lbf·in', { printed: '95 lbf·in', value: 95, unit: 'lbf·in' as const }, 'below-range'],
    ['160 lbf·ft', { printed: '160 lbf·ft', value: 160, unit: 'lbf·ft' as const }, 'above-range'],
    ['30 lbf·ft', { printed: '30 lbf·ft', value: 30, unit: 'lbf·ft' as const }, null],
    ['65 lbf·ft', { printed: '65 lbf·ft', value: 65, unit: 'lbf·ft' as const }, null],
  ])('a wrench of 150 foot pounds for %s', (_, target, refused) => {
    const { setting } = set(target, chosen(wrench({ unit: 'lbf·ft', most: 150 })));
    expect(setting.kind === 'refused' ? setting.why.code : null).toBe(refused);
  });

  test('an adapter on a wrench of unknown length, or on none, cannot be set for', () => {
    const on = { kind: 'adapter-on' as const, millimetres: 50, degrees: 0 };
    for (const entries of [[on], [chosen(wrench({ lever: null })), on]]) {
      const { setting } = set(NM(60), ...entries);
      expect(setting).toMatchObject({ kind: 'refused', why: { code: 'lever-unknown' } });
    }
  });
});

describe('the number said back', () => {
  const pair = { ...NM(30), also: [{ printed: '22 lbf·ft', value: 22, unit: 'lbf·ft' as const }] };
  test.each([
    [30, null, true],
    [30, 'N·m', true],
    [22, 'lbf·ft', true],
    [22, null, false],
    [30, 'lbf·ft', false],
    [30, 'lbf', false],
    [31, null, false],
  ])('%d %s is right: %s', (value, unit, right) => {
    expect(isSetRight(set(pair).setting, value, unit)).toBe(right);
  });

  test('with the adapter on the printed figure is wrong', () => {
    const { setting } = set(pair, chosen(wrench({ most: 100 })), { kind: 'adapter-on', millimetres: 100, degrees: 0 });
    expect(isSetRight(setting, 30, null)).toBe(false);
    expect(isSetRight(setting, 23, null)).toBe(true);
  });
});

describe('what speaks against a wrench', () => {
  test.each([
    ['its due day has passed', wrench({ calibrationDue: '2023-11-13' }), ['calibration-overdue']],
    ['it is used on its due day', wrench({ calibrationDue: '2023-11-14' }), []],
    ['nobody knows its due day', wrench({ calibrationDue: null }), ['calibration-unknown']],
  ])('%s', (_, w, doubts) => {
    const { w: bench, pass } = set(NM(60), chosen(w));
    expect(doubtsOf(bench.job, pass, bench.now())).toEqual(doubts);
  });

  test('a drop does, until another wrench is taken', () => {
    const dropped: EntryBody = { kind: 'wrench-dropped', tool: 'wrench' };
    const one = set(NM(60), chosen(wrench()), dropped);
    expect(doubtsOf(one.w.job, one.pass, one.w.now())).toContain('dropped');
    one.w.write([chosen(wrench({ id: 'other' }))]);
    expect(doubtsOf(one.w.job, one.pass, one.w.now())).toEqual([]);
  });
});
