import { describe, expect, test } from 'vitest';
import type { Entry } from '../../../src/core/job/entry';
import { isEntryBody, strayEntry } from '../../../src/core/job/entry-guard';
import { planOf } from '../../../src/core/job/plan';
import { atFirstPass, bolt, notSure, passes, setAt, shipped, soFar } from './workbench';

const envelope = { v: 1, seq: 1, prev: '', hash: '', at: 0, mono: 0, session: 's', who: 'me' };

describe('what an entry from outside must look like', () => {
  test('everything the program itself writes in a long stretch of work passes', () => {
    const w = atFirstPass();
    passes(w, 3);
    w.all(setAt(90), 'all-marked', soFar(45), soFar(90), bolt(2), notSure(3), 'take-back', 'hold-on', 'im-back');
    const plan = planOf(shipped('tarnbeck-head-slice'));
    expect(w.entries.filter((e) => !isEntryBody({ ...envelope, ...e })).map((e) => e.kind)).toEqual([]);
    expect(strayEntry(plan, w.entries)).toBeUndefined();
  });

  test.each([
    { kind: 'bolt-done', step: 's', pass: 'p', bolt: '7', inOrder: true },
    { kind: 'bolt-done', step: 's', pass: 'p', bolt: 0, inOrder: true },
    { kind: 'bolt-done', step: 's', pass: 'p', inOrder: true },
    { kind: 'bolt-turned', step: 's', pass: 'p', bolt: 1, degrees: Number.NaN },
    { kind: 'bolt-fault', step: 's', pass: 'p', bolt: 1, fault: 'fell-off', action: 'hold' },
    { kind: 'measured', step: 's', reading: 'r', value: 1, unit: 'toString', within: null },
    { kind: 'timer-started', timer: 't', ms: -1 },
    { kind: 'end-opened', end: 'e', what: '', blocks: 'never', why: 'dropped' },
    { kind: 'asked', question: { kind: 'reading', step: 's', reading: 'r', value: 1 } },
    { kind: 'asked', question: null },
    { kind: 'constructor' },
    { kind: 'no-such-kind' },
  ])('$kind with something missing or of another sort is refused (%#)', (body) => {
    expect(isEntryBody({ ...envelope, ...body })).toBe(false);
  });
});

describe('an entry that speaks of something the procedure does not have is found', () => {
  const plan = planOf(shipped('tarnbeck-head-slice'));
  const [stepId, planned] = [...plan.steps].find(([, p]) => p.passes.length > 0) ?? [];
  const step = stepId ?? '';
  const pass = planned?.passes[0]?.id ?? '';
  const moment = { seq: 5, at: 0, mono: 0, session: 's', who: 'me' };
  test.each<{ readonly entry: Entry; readonly stray: boolean }>([
    { entry: { ...moment, kind: 'bolt-done', step, pass, bolt: 1, inOrder: true }, stray: false },
    { entry: { ...moment, kind: 'bolt-done', step, pass, bolt: 99, inOrder: true }, stray: true },
    { entry: { ...moment, kind: 'heads-marked', step, pass: 'nowhere' }, stray: true },
    { entry: { ...moment, kind: 'step-done', step: 'nowhere' }, stray: true },
    { entry: { ...moment, kind: 'asked', question: { kind: 'skip-step', step: 'nowhere' } }, stray: true },
    { entry: { ...moment, kind: 'undone', target: 5 }, stray: true },
    { entry: { ...moment, kind: 'undone', target: 4 }, stray: false },
    { entry: { ...moment, kind: 'closed' }, stray: false },
  ])('$entry.kind: $stray (%#)', ({ entry, stray }) => {
    expect(strayEntry(plan, [entry])).toBe(stray ? entry : undefined);
  });
});
