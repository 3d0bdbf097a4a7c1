import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { command } from '../../../src/core/job/command';
import type { Entry, Moment } from '../../../src/core/job/entry';
import { evolve, fold } from '../../../src/core/job/evolve';
import { NO_PAST } from '../../../src/core/job/evolve/past';
import type { Job } from '../../../src/core/job/job';
import { planOf } from '../../../src/core/job/plan';
import { SEED, tries } from '../../long';
import { Driver } from '../../machine/driver';
import { type Dice, pause, turnFrom } from '../../machine/random-work';
import { atFirstPass, passes, shipped } from './workbench';

const dice = fc.record<Dice>({
  kind: fc.nat({ max: 99 }),
  rule: fc.nat({ max: 9_999 }),
  slot: fc.nat({ max: 9_999 }),
  wait: fc.nat({ max: 99_999 }),
});

/** A made-up session: mostly work, one turn in five taken back, a power cut now and then, and talk in between. */
function logOf(name: string, turns: readonly Dice[]): { readonly entries: readonly Entry[]; readonly undone: number } {
  const driver = new Driver(shipped(name));
  let mono = 0;
  let session = 1;
  const now = (): Moment => ({ at: 1_700_000_000_000 + mono, mono, session: `s${session}` });
  let driven = driver.begin([{ kind: 'session-opened' }], now());
  const entries = [...driven.entries];
  for (const one of turns) {
    mono += pause(one);
    const { job } = driven.snapshot.context;
    if (one.wait % 40 === 0) {
      session += 1;
      driven = driver.report(driven.snapshot, [{ kind: 'session-opened' }], now());
    } else if (one.wait % 7 === 0)
      driven = driver.report(driven.snapshot, [{ kind: 'said', code: 'step', text: 'so' }], now());
    else driven = driver.give(driven.snapshot, one.wait % 5 === 1 ? command('take-back') : turnFrom(job, one), now());
    entries.push(...driven.entries);
  }
  return { entries, undone: entries.filter(({ kind }) => kind === 'undone').length };
}

/** Everything a job says, without what is only kept to be quick. */
const told = ({ past, plan, entries, ...job }: Job) => ({ ...job, entries: entries.length });

describe('marks on the way make no difference', () => {
  test.each(['tarnbeck-head-slice', 'tarnbeck-head-gasket', 'practice-plate'])(
    'on %s every beginning of a log folds to the same job with them and without',
    (name) => {
      let undone = 0;
      let marked = 0;
      fc.assert(
        fc.property(fc.array(dice, { minLength: 250, maxLength: 250 }), (turns) => {
          const log = logOf(name, turns);
          undone += log.undone;
          let quick = fold(planOf(shipped(name)), []);
          let whole = quick;
          for (const entry of log.entries) {
            quick = evolve(quick, entry);
            // Without marks and without the fold kept alone, taking back folds all there is.
            whole = evolve({ ...whole, past: { ...NO_PAST, before: whole.past.before } }, entry);
            expect(told(quick)).toEqual(told(whole));
          }
          marked = Math.max(marked, quick.past.marks.length);
        }),
        { numRuns: tries(3, 60), seed: SEED },
      );
      expect(undone).toBeGreaterThan(10);
      expect(marked).toBeGreaterThan(1);
    },
    120_000,
  );
});

test('a mark that holds what is taken back is dropped, and what is left is what the log says', () => {
  const w = atFirstPass();
  passes(w, 3);
  expect(w.job.past.marks.map(({ count }) => count)).toEqual([32]);
  for (let n = 0; n < 20; n++) w.give('take-back');
  expect(w.job.past.marks).toEqual([]);
  const left = w.entries.filter(({ kind, seq }) => kind === 'bolt-done' && !w.job.undone.has(seq));
  const done = [...(w.job.tightening.get('tighten-left')?.values() ?? [])].flatMap(({ bolts }) => [...bolts.values()]);
  expect(done.filter(({ kind }) => kind === 'done')).toHaveLength(left.length);
});
