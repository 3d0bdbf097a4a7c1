import { describe, expect, test } from 'vitest';
import type { Entry, EntryBody } from '../../../src/core/job/entry';
import { type Job, newJob } from '../../../src/core/job/job';
import { planOf } from '../../../src/core/job/plan';
import { passState } from '../../../src/core/job/tightening';
import { daysOf } from '../../../src/core/record/days';
import { endsLedger } from '../../../src/core/record/ends-ledger';
import { exceptionsOf } from '../../../src/core/record/exceptions';
import { fastenerRecord } from '../../../src/core/record/fasteners';
import { partsOf } from '../../../src/core/record/parts';
import { meansOf, standing } from '../../../src/core/record/standing';
import { phaseTimes, workFold } from '../../../src/core/record/work-times';
import { atFirstPass, bolt, notSure, passes, setAt, shipped, soFar, Workbench } from '../job/workbench';

const plan = planOf(shipped('tarnbeck-head-slice'));
const DAY = 86_400_000;
const day = (at: number): string => String(Math.floor(at / DAY));

const torqued = (): Workbench => {
  const w = atFirstPass();
  passes(w, 3);
  return w;
};
const atAngle = (): Workbench => {
  const w = torqued();
  w.all(setAt(90), 'all-marked');
  return w;
};
const record = (w: Workbench, kind: string, nth = 0) =>
  fastenerRecord(w.job, w.entries).filter((p) => p.kind === kind)[nth];

describe('pass by bolt', () => {
  test('a done bolt carries when, who and what the wrench was said to be set at', () => {
    const w = atFirstPass();
    w.all(setAt(30), bolt(1));
    const [first, second] = record(w, 'torque')?.bolts ?? [];
    expect(first).toMatchObject({ bolt: 1, state: 'done', setting: { value: 30, unit: 'N·m' }, exceptions: [] });
    expect(first?.confirmed).toMatchObject({ who: 'me', at: w.now().at });
    expect(second).toMatchObject({ bolt: 2, state: 'open', confirmed: null, setting: null });
  });

  test('what was taken back is not confirmed any more', () => {
    const w = atFirstPass();
    w.all(setAt(30), bolt(1), 'take-back');
    expect(record(w, 'torque')?.bolts[0]).toMatchObject({ confirmed: null });
  });

  test.each([
    { turns: [], swings: [90] },
    { turns: [45], swings: [45, 45] },
    { turns: [30, 60], swings: [30, 30, 30] },
  ])('an angle told at $turns is swings of $swings', ({ turns, swings }) => {
    const w = atAngle();
    w.all(...turns.map(soFar), turns.length === 0 ? bolt(1) : soFar(90));
    expect(record(w, 'angle')?.bolts[0]).toMatchObject({ state: 'done', swings });
  });

  test('a swing under way counts as far as it was told, and no further', () => {
    const w = atAngle();
    w.give(soFar(45));
    expect(record(w, 'angle')?.bolts[0]).toMatchObject({ state: 'partial', swings: [45], confirmed: null });
  });

  test('a tightening that an answer left out is not shown as open, unless somebody has touched it', () => {
    const job = newJob(planOf(shipped('tarnbeck-head-gasket')));
    const [other, only] = [...job.plan.steps.values()].flatMap(({ step }) =>
      step.kind === 'tighten' && step.only ? [[step.id, step.only] as const] : [],
    )[0] ?? ['', undefined];
    if (!only) return expect.unreachable();
    const answered = { ...job, answers: new Map([[only.step, 'another']]) };
    const steps = (of: Job) => new Set(fastenerRecord(of, []).map(({ step }) => step));
    expect(steps(job)).toContain(other);
    expect(steps(answered)).not.toContain(other);
    expect(
      steps({ ...answered, tightening: new Map([[other, new Map([['first', passState(new Map(), 'first')]])]]) }),
    ).toContain(other);
  });

  test('a bolt in doubt is UNKNOWN and says so', () => {
    const w = atAngle();
    w.all(bolt(1), notSure(1));
    const [one] = record(w, 'angle')?.bolts ?? [];
    expect(one).toMatchObject({ state: 'unknown', confirmed: null });
    expect(one?.exceptions.map((e) => e.kind)).toEqual(['bolt-unknown']);
  });
});

describe('exceptions', () => {
  const endings = (entries: readonly Entry[]) =>
    exceptionsOf(entries).map(({ entry, ending, closedBy }) => [entry.kind, ending, closedBy?.kind ?? null]);

  test.each<{ readonly what: string; readonly bodies: readonly EntryBody[]; readonly told: readonly unknown[] }>([
    {
      what: 'a fault is closed by the bolt being done again',
      bodies: [
        { kind: 'bolt-fault', step: 's', pass: 'p', bolt: 3, fault: 'clicked-early', action: 'redo-bolt' },
        { kind: 'bolt-done', step: 's', pass: 'p', bolt: 3, inOrder: true },
      ],
      told: [['bolt-fault', 'closed', 'bolt-done']],
    },
    {
      what: 'another bolt closes nothing',
      bodies: [
        { kind: 'bolt-fault', step: 's', pass: 'p', bolt: 3, fault: 'felt-soft', action: 'hold' },
        { kind: 'bolt-done', step: 's', pass: 'p', bolt: 4, inOrder: true },
      ],
      told: [['bolt-fault', 'open', null]],
    },
    {
      what: 'UNKNOWN is closed by proof',
      bodies: [
        { kind: 'bolt-unknown', step: 's', pass: 'p', bolt: 1, why: 'interrupted' },
        { kind: 'bolt-proved', step: 's', pass: 'p', bolt: 1, verdict: 'done', clock: 3 },
      ],
      told: [['bolt-unknown', 'closed', 'bolt-proved']],
    },
    {
      what: 'work out of order stays open until its rule is applied',
      bodies: [{ kind: 'bolt-done', step: 's', pass: 'p', bolt: 5, inOrder: false }],
      told: [['bolt-done', 'open', null]],
    },
    {
      what: 'an override is told and closes what it overrides',
      bodies: [
        { kind: 'order-broken', step: 's', pass: 'p' },
        { kind: 'order-accepted', step: 's', pass: 'p', override: true },
      ],
      told: [
        ['order-broken', 'closed', 'order-accepted'],
        ['order-accepted', 'told', null],
      ],
    },
    {
      what: 'a dropped part is closed by finding that one',
      bodies: [
        { kind: 'end-opened', end: 'a', what: '', blocks: 'turn-by-hand', why: 'dropped' },
        { kind: 'end-opened', end: 'b', what: '', blocks: 'turn-by-hand', why: 'dropped' },
        { kind: 'end-closed', end: 'b', how: 'found', reason: '' },
      ],
      told: [
        ['end-opened', 'open', null],
        ['end-opened', 'closed', 'end-closed'],
      ],
    },
    {
      what: 'a reading out of limits is closed only by one inside them',
      bodies: [
        { kind: 'measured', step: 's', reading: 'r', value: 9, unit: 'mm', within: false },
        { kind: 'measured', step: 's', reading: 'r', value: 8, unit: 'mm', within: false },
        { kind: 'measured', step: 's', reading: 'r', value: 1, unit: 'mm', within: true },
      ],
      told: [
        ['measured', 'closed', 'measured'],
        ['measured', 'closed', 'measured'],
      ],
    },
    {
      what: 'a fault that was taken back is told as taken back',
      bodies: [
        { kind: 'bolt-fault', step: 's', pass: 'p', bolt: 3, fault: 'felt-soft', action: 'hold' },
        { kind: 'undone', target: 1 },
      ],
      told: [['undone', 'told', null]],
    },
  ])('$what', ({ bodies, told }) => {
    expect(endings(numbered(bodies))).toEqual(told);
  });
});

describe('loose ends', () => {
  test('each names what opened it and what closed it, and one opened again stands twice', () => {
    const w = new Workbench(shipped('tarnbeck-head-slice'));
    w.write([
      { kind: 'end-opened', end: 'x', what: 'rag', blocks: 'crank', why: 'came-off' },
      { kind: 'end-closed', end: 'x', how: 'refitted', reason: '' },
      { kind: 'end-opened', end: 'x', what: 'rag', blocks: 'crank', why: 'came-off' },
    ]);
    const lines = endsLedger(plan)(standing(w.entries));
    expect(lines.map(({ opened, closed }) => [opened.seq, closed?.seq ?? null])).toEqual([
      [3, 4],
      [5, null],
    ]);
  });
});

describe('working time', () => {
  test('pauses and the nights between sessions are left out', () => {
    const w = new Workbench(shipped('tarnbeck-head-slice'));
    w.wait(600_000);
    w.write([{ kind: 'paused', why: 'held' }]);
    w.wait(3_600_000);
    w.write([{ kind: 'came-back' }]);
    w.wait(300_000);
    w.write([{ kind: 'paused', why: 'knocked-off' }]);
    w.reopen(14 * 3_600_000);
    w.wait(60_000);
    w.write([{ kind: 'came-back' }]);
    w.wait(120_000);
    w.write([{ kind: 'listed', part: 'none' }]);
    const [phase] = phaseTimes(plan, workFold(plan)(w.entries).stretches);
    expect(phase?.workedMs).toBe(600_000 + 300_000 + 120_000);
    expect(phase?.people).toEqual([{ who: 'me', workedMs: 1_020_000 }]);
  });

  test('each person has their own share', () => {
    const w = new Workbench(shipped('tarnbeck-head-slice'));
    w.wait(60_000);
    w.write([{ kind: 'listed', part: 'a' }]);
    const mine = w.entries;
    const other = { ...at(w, 120_000), kind: 'listed' as const, part: 'b', seq: 4, who: 'second' };
    const last = { ...at(w, 150_000), kind: 'listed' as const, part: 'c', seq: 5, who: 'second' };
    const [phase] = phaseTimes(plan, workFold(plan)([...mine, other, last]).stretches);
    expect(phase?.people).toEqual([
      { who: 'me', workedMs: 120_000 },
      { who: 'second', workedMs: 30_000 },
    ]);
  });
});

describe('days', () => {
  test('the job is told day by day', () => {
    const w = new Workbench(shipped('tarnbeck-head-slice'));
    w.all('done');
    w.reopen(DAY);
    w.all('done', 'done');
    const days = daysOf(w.entries, workFold(plan)(w.entries).stretches, day);
    expect(days.map(({ stepsDone, people }) => ({ stepsDone, people }))).toEqual([
      { stepsDone: 1, people: ['me'] },
      { stepsDone: 2, people: ['me'] },
    ]);
  });
});

describe('parts', () => {
  test('a part counts as used once every step that needs it is done', () => {
    const w = torqued();
    const before = partsOf(plan, w.entries.slice(0, 2)).map((p) => p.progress);
    expect(new Set(before)).toEqual(new Set(['not-yet']));
    const needed = [...plan.steps.values()].flatMap(({ step }) => step.parts.map((part) => ({ part, step: step.id })));
    const done = new Set(w.entries.flatMap((e) => (e.kind === 'step-done' ? [e.step] : [])));
    for (const { part, progress } of partsOf(plan, w.entries)) {
      const steps = needed.filter((n) => n.part === part.id);
      if (steps.length > 0 && steps.every((n) => done.has(n.step))) expect(progress).toBe('used');
      else expect(progress).not.toBe('used');
    }
  });
});

describe('what stands', () => {
  test('talk and what was taken back are left out; the take-back itself stays', () => {
    const entries = numbered([
      { kind: 'heard', words: 'done', score: 1, by: 'voice', command: 'done' },
      { kind: 'listed', part: 'a' },
      { kind: 'undone', target: 2 },
    ]);
    expect(standing(entries).map((e) => e.kind)).toEqual(['undone']);
  });

  test('an entry came by the command heard last before it', () => {
    const entries = numbered([
      { kind: 'session-opened' },
      { kind: 'heard', words: 'done', score: 1, by: 'voice', command: 'done' },
      { kind: 'listed', part: 'a' },
      { kind: 'heard', words: 'done', score: 1, by: 'touch', command: 'done' },
      { kind: 'listed', part: 'b' },
    ]);
    expect([...meansOf(entries)]).toEqual([
      [3, 'voice'],
      [5, 'touch'],
    ]);
  });
});

function numbered(bodies: readonly EntryBody[]): readonly Entry[] {
  return bodies.map((body, i) => ({ ...body, seq: i + 1, at: i * 1000, mono: i * 1000, session: 's', who: 'me' }));
}

const at = (w: Workbench, mono: number) => ({ at: w.now().at - w.now().mono + mono, mono, session: 's1' });
