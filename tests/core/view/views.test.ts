import { describe, expect, test } from 'vitest';
import { checkDocument } from '../../../src/cli/check-document';
import type { Entry } from '../../../src/core/job/entry';
import { phraseAll } from '../../../src/core/phrasing/phrase';
import type { Reply } from '../../../src/core/phrasing/reply';
import type { AlsoIn } from '../../../src/core/view/bench-value';
import { benchView } from '../../../src/core/view/build-bench';
import { timelineOf } from '../../../src/core/view/build-timeline';
import { atFirstPass, bolt, markAt, passes, setAt, soFar, Workbench } from '../job/workbench';
import { englishBook } from '../phrasing/english';

const show = (replies: readonly { readonly code: string }[]) => replies.map(({ code }) => code).join(' ');
const valueWords = (replies: readonly Reply[]) => phraseAll(englishBook(), replies).shown;
const kindOf = ({ kind }: Entry) => kind;
const lookAt = (w: Workbench, alsoIn?: AlsoIn) =>
  benchView(w.job, w.now(), { show, label: (rule) => rule, examples: new Map(), ...(alsoIn ? { alsoIn } : {}) });

describe('the torque beside the printed one', () => {
  test.each([
    // 30 N·m / 1.3558179483314 = 22.127 lbf·ft (NIST SP 811, appendix B.8)
    { alsoIn: undefined, shown: /^22(\.\d)? lbf·ft$/ },
    { alsoIn: { torque: 'lbf·ft' as const }, shown: /^22(\.\d)? lbf·ft$/ },
    // 30 N·m / 0.1129848290276 = 265.5 lbf·in, 30 N·m / 9.80665 = 3.059 kgf·m (the same)
    { alsoIn: { torque: 'lbf·in' as const }, shown: /^26[56](\.\d)? lbf·in$/ },
    { alsoIn: { torque: 'kgf·m' as const }, shown: /^3\.1 kgf·m$/ },
  ])('in $alsoIn is shown small', ({ alsoIn, shown }) => {
    expect(lookAt(atFirstPass(), alsoIn).valueAlso).toMatch(shown);
  });

  test('is left out where it would be the printed one again', () => {
    expect(lookAt(atFirstPass(), { torque: 'N·m' }).valueAlso).toBeNull();
  });
});

describe('an amount to fill, beside the printed one', () => {
  function atFill(amount: string): Workbench {
    const text = `format: 1
language: en
id: fill
title: fill
edition: test
demonstration: true
source: made up for a test
machine: a machine
phases:
  - id: work
    say: Work
    steps:
      - { id: oil, kind: fill, say: Fill it., what: oil, amount: "${amount}" }
`;
    const checked = checkDocument(text, 'fill.yaml');
    if (!checked.ok) throw new Error(JSON.stringify(checked.error, null, 1));
    return new Workbench(checked.value);
  }

  test.each([
    { amount: '4.5 L (4.8 US qt)', alsoIn: {}, shown: '4.8 US qt' },
    { amount: '4.5 L (4.8 US qt)', alsoIn: { volume: 'US qt' as const }, shown: '4.8 US qt' },
    // 4.5 L / 1.1365225 = 3.96 imperial quarts (NIST SP 811, appendix B.8: a gallon is 4.54609 L)
    { amount: '4.5 L (4.8 US qt)', alsoIn: { volume: 'imp qt' as const }, shown: '3.96 imp qt' },
    { amount: '4.5 L', alsoIn: {}, shown: null },
    { amount: '4.5 L', alsoIn: { volume: 'L' as const }, shown: null },
    { amount: '4.8 US qt', alsoIn: { volume: 'L' as const }, shown: '4.54 L' },
    // A choice of torque is none of amounts.
    { amount: '4.5 L', alsoIn: { torque: 'lbf·ft' as const }, shown: null },
  ])('$amount, $alsoIn: $shown', ({ amount, alsoIn, shown }) => {
    expect(lookAt(atFill(amount), alsoIn).valueAlso).toBe(shown);
  });
});

describe('the value, huge', () => {
  const shownValue = (w: Workbench) => {
    const words = { show: valueWords, label: (rule: string) => rule, examples: new Map() };
    const { value, valueAlso, line } = benchView(w.job, w.now(), words);
    return { value, valueAlso, line };
  };
  const wrench = {
    id: 'w',
    say: 'long wrench',
    unit: 'N·m' as const,
    least: 10,
    most: 100,
    graduation: 1,
    lever: 300,
    calibrationDue: null,
  };

  test('is the maker’s figure where nothing else is known of the wrench', () => {
    expect(shownValue(atFirstPass())).toMatchObject({ value: '30 N·m', valueAlso: expect.stringMatching(/lbf·ft$/) });
  });

  test('is what is set on the wrench in hand, with the maker’s figure beside it', () => {
    const w = atFirstPass();
    w.write([
      { kind: 'wrench-chosen', tool: 'torque-wrench', wrench },
      { kind: 'adapter-on', millimetres: 150, degrees: 0 },
    ]);
    // 30 · 300 / 450 = 20: US Army TM 9-254.
    expect(shownValue(w)).toMatchObject({ value: '20 N·m', valueAlso: expect.stringContaining('30 N·m') });
  });

  test('is none while a broken bolt holds the job, and the line says so', () => {
    const w = atFirstPass();
    w.all(setAt(30), bolt(1), 'snapped');
    expect(shownValue(w)).toMatchObject({ value: null, valueAlso: null, line: expect.stringContaining('on hold') });
  });
});

test('the fastener at the cursor is told apart from the others', () => {
  const w = atFirstPass();
  w.all(setAt(30), bolt(1));
  const here = lookAt(w).drawing?.fasteners.filter((f) => f.here);
  expect(here?.map((f) => f.number)).toEqual([2]);
});

test('every bolt that is part way through its angle has its degrees so far, and the one at the cursor what is to go', () => {
  const w = atFirstPass();
  passes(w, 3);
  w.all(setAt(90), 'all-marked', soFar(45));
  const words = { show: valueWords, label: (rule: string) => rule, examples: new Map() };
  const turnedOf = () => benchView(w.job, w.now(), words).drawing?.fasteners.filter((f) => f.turned !== undefined);
  expect(turnedOf()).toMatchObject([{ number: 1, mark: 'partial', turned: '45°' }]);
  expect(benchView(w.job, w.now(), words).swing?.words).toBe('45° so far, 45° to go');
  // One that is in doubt has no degrees to be trusted, and one that is done needs none.
  w.all('hold-on', 'im-back');
  expect(turnedOf()).toEqual([]);
  w.all(markAt(12), 'confirm', bolt(1));
  expect(turnedOf()).toEqual([]);
  expect(benchView(w.job, w.now(), words).swing?.words).toBe('90° to go');
});

describe('the timeline', () => {
  test('joins a take-back to what it takes back', () => {
    const w = atFirstPass();
    w.all(setAt(30), bolt(1), 'take-back');
    const lines = timelineOf(w.job.plan, w.entries, kindOf);
    const back = lines.find((line) => line.corrects !== undefined);
    expect(lines.find((line) => line.seq === back?.corrects)).toMatchObject({ undone: true, bolt: 1 });
  });

  test('names the person only where another one takes over', () => {
    const w = atFirstPass();
    const [first, second, ...rest] = w.entries;
    if (!first || !second) return expect.unreachable();
    const lines = timelineOf(w.job.plan, [first, { ...second, who: 'other' }, ...rest], kindOf);
    expect(lines.slice(0, 4).map((line) => line.who)).toEqual([undefined, 'other', 'me', undefined]);
  });

  test('puts what was heard under the phase of what it did', () => {
    const w = atFirstPass();
    const lines = timelineOf(w.job.plan, w.entries, kindOf);
    const at = lines.findIndex((line, i) => i > 0 && line.phase !== lines[i - 1]?.phase);
    const [before, first] = [w.entries[at - 1], w.entries[at]];
    if (!before || !first) return expect.unreachable();
    const heard = { ...before, kind: 'heard', words: 'done', score: 1, by: 'voice', command: 'done' } as const;
    const told = timelineOf(w.job.plan, [...w.entries.slice(0, at), heard, ...w.entries.slice(at)], kindOf);
    expect(told[at]).toMatchObject({ kind: 'heard', phase: lines[at]?.phase });
    expect(told[at - 1]?.phase).toBe(lines[at - 1]?.phase);
  });

  test('calls what becomes of the job by that word, and only a pause a break', () => {
    const w = atFirstPass();
    w.all('hold-on', 'im-back');
    const kinds = new Map(w.entries.map((e, i) => [e.kind, timelineOf(w.job.plan, w.entries, kindOf)[i]?.kind]));
    expect([kinds.get('job-started'), kinds.get('paused'), kinds.get('came-back')]).toEqual(['job', 'break', 'break']);
  });
});
