import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Entry, Moment } from '../../src/core/job/entry';
import { fold } from '../../src/core/job/evolve';
import type { Job } from '../../src/core/job/job';
import { offersOf } from '../../src/core/job/offers';
import { cursorOf, passStatesOf, placeOf, workPlace } from '../../src/core/job/place';
import { nodeOf, planOf, stepIn } from '../../src/core/job/plan';
import { revisionOf } from '../../src/core/job/revision';
import { boltState, passState } from '../../src/core/job/tightening';
import type { Procedure } from '../../src/core/procedure/procedure';
import { shipped } from '../core/job/workbench';
import { SEED, tries } from '../long';
import { AngleLedger } from './angle-ledger';
import { Driver, pathOf, type Snapshot } from './driver';
import { forbidden, owed } from './owed';
import { type Dice, pause, turnFrom } from './random-work';
import { wayForward } from './way-forward';

const TURNS = 1000;
/** Runs for each procedure: few on every build, as many as there is time for when soaking. */
const RUNS = tries(2, 100);

const dice = fc.record<Dice>({
  kind: fc.nat({ max: 99 }),
  rule: fc.nat({ max: 9_999 }),
  slot: fc.nat({ max: 9_999 }),
  wait: fc.nat({ max: 99_999 }),
});

/** A full-size job worked turn by turn on its machine, with everything that must hold looked at after each. */
class Run {
  readonly broken: string[] = [];
  changed = 0;
  closed = 0;
  private driver: Driver;
  private snapshot: Snapshot;
  private entries: readonly Entry[];
  private ledger: AngleLedger;
  private session = 1;
  private mono = 0;

  constructor(readonly procedure: Procedure) {
    this.driver = new Driver(procedure);
    this.ledger = new AngleLedger(planOf(procedure));
    const begun = this.driver.begin([{ kind: 'session-opened' }], this.now());
    this.snapshot = begun.snapshot;
    this.entries = begun.entries;
  }

  get job(): Job {
    return this.snapshot.context.job;
  }

  private now(): Moment {
    return { at: 1_700_000_000_000 + this.mono, mono: this.mono, session: `s${this.session}` };
  }

  turn(d: Dice, index: number): void {
    this.mono += pause(d);
    const before = this.job;
    const { snapshot, entries } =
      d.kind === 99 ? this.reopen() : this.driver.give(this.snapshot, turnFrom(before, d), this.now());
    this.snapshot = snapshot;
    this.entries = [...this.entries, ...entries];
    if (entries.length > 0) this.changed++;
    this.look(before, entries);
    if (index % 50 === 0 || this.job.status === 'closed') this.foldsToTheSame();
    if (this.job.status === 'closed') this.beginAgain();
  }

  private reopen() {
    this.session++;
    const driven = this.driver.report(this.snapshot, [{ kind: 'session-opened' }], this.now());
    for (const at of unknownOf(driven.snapshot.context.job)) this.ledger.doubt(at);
    return driven;
  }

  private look(before: Job, entries: readonly Entry[]): void {
    const { job } = this;
    this.broken.push(...forbidden(before, entries), ...this.ledger.judge(entries), ...leftOpen(job));
    if (pathOf(this.snapshot.value) !== nodeOf(job.plan, placeOf(job))) this.broken.push('the machine is elsewhere');
    const sameMeaning = meaningOf(before) === meaningOf(job);
    if (!sameMeaning && revisionOf(before) === revisionOf(job)) this.broken.push('meaning changed, revision did not');
  }

  /** The log as it comes back from a disk gives the job that was worked. */
  private foldsToTheSame(): void {
    const read = JSON.parse(JSON.stringify(this.entries)) as readonly Entry[];
    expect(fold(this.job.plan, read)).toEqual(this.job);
  }

  private beginAgain(): void {
    this.closed++;
    this.ledger = new AngleLedger(planOf(this.procedure));
    const begun = this.driver.begin([{ kind: 'session-opened' }], this.now());
    this.snapshot = begun.snapshot;
    this.entries = begun.entries;
  }
}

const meaningOf = (job: Job): string =>
  JSON.stringify([offersOf(job), cursorOf(job), nodeOf(job.plan, placeOf(job)), job.pending]);

function unknownOf(job: Job) {
  return [...job.tightening].flatMap(([step, states]) =>
    [...states].flatMap(([pass, state]) =>
      [...state.bolts].flatMap(([bolt, is]) => (is.kind === 'unknown' ? [{ step, pass, bolt }] : [])),
    ),
  );
}

/** A pass behind the one being worked with anything in it not done. */
function leftOpen(job: Job): readonly string[] {
  const place = workPlace(job);
  if (place.kind !== 'pass') return [];
  const { passes } = stepIn(job.plan, place.step);
  return passes
    .slice(
      0,
      passes.findIndex((p) => p.id === place.pass),
    )
    .flatMap((pass) => {
      const state = passState(passStatesOf(job, place.step), pass.id);
      const open = pass.order.filter((n) => boltState(state, n).kind !== 'done');
      return open.length > 0 || state.orderBroken ? [`${pass.id} left with ${open}`] : [];
    });
}

const NAMES = ['practice-plate', 'tarnbeck-head-slice', 'flange-eight-bolt', 'wheel-five-stud', 'tarnbeck-head-gasket'];
/** Short enough that a thousand turns of muddle bring them to their end more than once. */
const CLOSES: ReadonlySet<string> = new Set(['practice-plate', 'wheel-five-stud']);

describe.each(NAMES)('%s, full size', (name) => {
  const procedure = shipped(name);

  test(`${TURNS} turns of mostly legal work break nothing`, { timeout: tries(600_000, 7_200_000) }, () => {
    const tally = { changed: 0, closed: 0, runs: 0 };
    fc.assert(
      fc.property(fc.array(dice, { minLength: TURNS, maxLength: TURNS, size: 'max' }), (turns) => {
        const run = new Run(procedure);
        for (const [index, d] of turns.entries()) {
          run.turn(d, index);
          if (run.broken.length > 0) break;
        }
        tally.changed += run.changed;
        tally.closed += run.closed;
        tally.runs++;
        expect(run.broken).toEqual([]);
      }),
      { numRuns: RUNS, seed: SEED, endOnFailure: true },
    );
    console.log(`${name}: ${tally.runs} runs, ${tally.changed} turns changed something, ${tally.closed} jobs closed`);
    expect(tally.changed / (tally.runs * TURNS)).toBeGreaterThan(0.3);
    if (CLOSES.has(name)) expect(tally.closed).toBeGreaterThan(0);
  });

  test.each(['first', 'last'] as const)('worked without a mistake it closes, by the %s branches', (branch) => {
    const driver = new Driver(procedure);
    let mono = 0;
    const now = (): Moment => ({ at: mono, mono, session: 's' });
    let { snapshot } = driver.begin([], now());
    for (let turns = 0; snapshot.context.job.status !== 'closed'; turns++) {
      expect(turns, pathOf(snapshot.value)).toBeLessThan(TURNS);
      const before = snapshot.context.job;
      const place = placeOf(before);
      const waits = place.kind === 'step' || (place.kind === 'pass' && place.part === 'wait');
      mono += waits ? 48 * 3_600_000 : 20_000;
      const driven = driver.give(snapshot, wayForward(before, branch), now());
      expect(forbidden(before, driven.entries)).toEqual([]);
      ({ snapshot } = driven);
    }
    expect(owed(snapshot.context.job)).toEqual([]);
  });
});
