import { describe, expect, test } from 'vitest';
import type { ChosenWrench } from '../../../src/core/job/chosen-wrench';
import type { Entry, EntryBody } from '../../../src/core/job/entry';
import { planOf } from '../../../src/core/job/plan';
import { standing } from '../../../src/core/record/standing';
import { toolsOf } from '../../../src/core/record/tools';
import { shipped } from '../job/workbench';

const plan = planOf(shipped('tarnbeck-head-slice'));
const TOOL = 'torque-wrench';
const at = { step: 'tighten-left', pass: 'first' };
const DAY = 86_400_000;
const NOON = Date.UTC(2031, 2, 4, 12);

const wrench = (id: string, calibrationDue: string | null): ChosenWrench => ({
  id,
  say: id,
  unit: 'N·m',
  least: 20,
  most: 100,
  graduation: 1,
  lever: null,
  calibrationDue,
});
const log = (...bodies: readonly EntryBody[]): readonly Entry[] =>
  bodies.map((body, i): Entry => ({ ...body, seq: i + 1, at: NOON + i * DAY, mono: i, session: 's', who: 'me' }));
const chosen = (id: string, due: string | null): EntryBody => ({
  kind: 'wrench-chosen',
  tool: TOOL,
  wrench: wrench(id, due),
});
const done = (bolt: number): EntryBody => ({ kind: 'bolt-done', ...at, bolt, inOrder: true });
const wrenches = (entries: readonly Entry[]) =>
  toolsOf(plan, standing(entries)).find(({ tool }) => tool.id === TOOL)?.wrenches;

describe('the tools of the record', () => {
  test('are all the document calls for, without a wrench where none was named', () => {
    const tools = toolsOf(plan, []);
    expect(tools.map(({ tool }) => tool.id)).toEqual([...plan.procedure.tools.keys()]);
    expect(tools.flatMap((one) => one.wrenches)).toEqual([]);
  });

  test('name each wrench that stood for a tool, in order, with its last use', () => {
    const entries = log(chosen('long', '2031-06-01'), done(1), chosen('short', null), done(2), done(3));
    expect(wrenches(entries)).toMatchObject([
      { wrench: { id: 'long', calibrationDue: '2031-06-01' }, lastUsed: { seq: 2 }, doubts: [] },
      { wrench: { id: 'short' }, lastUsed: { seq: 5 }, doubts: ['calibration-unknown'] },
    ]);
  });

  test('hold the calibration against the day of the last use: good on its due day, over on the next', () => {
    expect(wrenches(log(chosen('long', '2031-03-05'), done(1)))?.[0]?.doubts).toEqual([]);
    expect(wrenches(log(chosen('long', '2031-03-05'), done(1), done(2)))?.[0]?.doubts).toEqual(['calibration-overdue']);
  });

  test('tell of a fall until the wrench is taken up again, and know what Setup has learnt about it', () => {
    const fallen = log(chosen('long', null), { kind: 'wrench-dropped', tool: TOOL });
    expect(wrenches(fallen)?.[0]).toMatchObject({ dropped: { seq: 2 }, doubts: ['dropped', 'calibration-unknown'] });
    const checked = log(chosen('long', null), { kind: 'wrench-dropped', tool: TOOL }, chosen('long', '2032-03-01'));
    expect(wrenches(checked)).toMatchObject([{ wrench: { calibrationDue: '2032-03-01' }, dropped: null, doubts: [] }]);
  });

  test('tell of the fall of a wrench that nobody had named, also when one is named afterwards', () => {
    const entries = log({ kind: 'wrench-dropped', tool: TOOL }, chosen('short', null));
    const told = toolsOf(plan, entries).find(({ tool }) => tool.id === TOOL);
    expect(told).toMatchObject({ droppedUnnamed: { seq: 1 }, wrenches: [{ wrench: { id: 'short' }, dropped: null }] });
  });

  test('leave out a wrench whose choice was taken back', () => {
    expect(wrenches(log(chosen('long', null), { kind: 'undone', target: 1 }))).toEqual([]);
  });
});
