import { readFileSync } from 'node:fs';
import { checkDocument } from '../../../src/cli/check-document';
import { type Command, command, type RuleName } from '../../../src/core/job/command';
import { decide } from '../../../src/core/job/decide/decide';
import type { Decision } from '../../../src/core/job/decision';
import type { Entry, EntryBody, Moment } from '../../../src/core/job/entry';
import { evolve, fold } from '../../../src/core/job/evolve';
import type { Job } from '../../../src/core/job/job';
import { placeOf } from '../../../src/core/job/place';
import { nodeOf, planOf } from '../../../src/core/job/plan';
import type { Procedure } from '../../../src/core/procedure/procedure';

/** A shipped procedure, checked; a broken one fails the test with its issues. */
export function shipped(name: string): Procedure {
  const file = `procedures/${name}.yaml`;
  const checked = checkDocument(readFileSync(file, 'utf8'), file);
  if (!checked.ok) throw new Error(JSON.stringify(checked.error, null, 1));
  return checked.value;
}

export const bolt = (n: number): Command => command('bolt-done', { bolt: { kind: 'integer', value: n } });
export const setAt = (value: number, unit: string | null = null): Command =>
  command('set-at', { setting: { kind: 'reading', value, unit } });
export const soFar = (n: number): Command => command('so-far', { degrees: { kind: 'integer', value: n } });
export const markAt = (hour: number): Command => command('mark-at', { clock: { kind: 'integer', value: hour } });
export const notSure = (n: number): Command => command('not-sure', { bolt: { kind: 'integer', value: n } });
const answer = (id: string): Command => command('answer', { answer: { kind: 'option', id } });

/** A job worked by hand in a test: every decision is written at once, one second after the last. */
export class Workbench {
  entries: Entry[] = [];
  job: Job;
  private ms = 0;
  private session = 's1';

  constructor(readonly procedure: Procedure) {
    this.job = fold(planOf(procedure), []);
    this.write([
      { kind: 'job-started', job: 'job-1', procedure: procedure.id, text: '', textHash: '', machine: '', people: [] },
      { kind: 'session-opened' },
    ]);
  }

  now(): Moment {
    return { at: 1_700_000_000_000 + this.ms, mono: this.ms, session: this.session };
  }

  write(bodies: readonly EntryBody[]): void {
    for (const body of bodies) {
      const entry: Entry = { ...body, ...this.now(), seq: this.entries.length + 1, who: 'me' };
      this.entries.push(entry);
      this.job = evolve(this.job, entry);
    }
  }

  give(c: Command | RuleName): Decision {
    this.ms += 1000;
    const decision = decide(this.job, typeof c === 'string' ? command(c) : c, this.now());
    this.write(decision.entries);
    return decision;
  }

  all(...commands: readonly (Command | RuleName)[]): Decision | undefined {
    let last: Decision | undefined;
    for (const c of commands) last = this.give(c);
    return last;
  }

  wait(ms: number): void {
    this.ms += ms;
  }

  reopen(awayMs: number): void {
    this.ms += awayMs;
    this.session = `${this.session}+`;
    this.write([{ kind: 'session-opened' }]);
  }

  get node(): string {
    return nodeOf(this.job.plan, placeOf(this.job));
  }
}

export const codes = (decision: Decision | undefined): readonly string[] => decision?.replies.map((r) => r.code) ?? [];

/** The demonstration slice, worked up to the first pass being set. */
export function atFirstPass(): Workbench {
  const w = new Workbench(shipped('tarnbeck-head-slice'));
  w.all('done', 'done', 'done', 'done', 'done', answer('printed-radiator'), 'done', 'done', 'have-time');
  return w;
}

const TORQUES = [30, 50, 70];

/** Works whole passes in order, from the first. */
export function passes(w: Workbench, many: number): void {
  for (const [index, target] of TORQUES.entries()) {
    if (index >= many) return;
    w.give(setAt(target));
    for (let n = 1; n <= 10; n++) w.give(bolt(n));
  }
}
