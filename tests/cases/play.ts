import { existsSync, readFileSync } from 'node:fs';
import { checkDocument } from '../../src/cli/check-document';
import { readTongue } from '../../src/cli/tongue-files';
import { decide } from '../../src/core/job/decide/decide';
import { chooseWrench } from '../../src/core/job/decide/wrench';
import { type Decision, told } from '../../src/core/job/decision';
import type { Moment } from '../../src/core/job/entry';
import type { Job } from '../../src/core/job/job';
import { offersOf } from '../../src/core/job/offers';
import { placeOf } from '../../src/core/job/place';
import { nodeOf } from '../../src/core/job/plan';
import { revisionOf } from '../../src/core/job/revision';
import { type BoltState, boltState } from '../../src/core/job/tightening';
import { isTimeAsked } from '../../src/core/job/time-gate';
import type { Procedure } from '../../src/core/procedure/procedure';
import type { Tongue } from '../../src/core/tongue';
import { type Hearing, hearing, staleHearing } from '../../src/machine/hearing';
import { Driver, pathOf, type Snapshot } from '../machine/driver';
import { wayForward } from '../machine/way-forward';
import type { Case, Event, Final, Outcome } from './case';

/** One event with what was said to it in words. */
export type Turn = Outcome & { readonly spoken: string; readonly shown: string };

const SECONDS = 1000;

/** A session with the real language, decisions and machine, and nothing else: no ear, no voice, no disk. */
export class Session {
  private readonly driver: Driver;
  private readonly tongue: Tongue;
  private snapshot: Snapshot;
  private mono = 0;
  private session = 1;
  /** The revision before the last turn. */
  private revisionBefore = '';

  constructor({ procedure, people, start }: Case) {
    const document = documentOf(procedure);
    this.tongue = tongueOf(document.language);
    this.driver = new Driver(document);
    this.snapshot = this.driver.begin([{ kind: 'session-opened' }], this.now(), people).snapshot;
    if (start !== undefined) this.goTo(start);
    this.beginning = this.job;
  }

  get job(): Job {
    return this.snapshot.context.job;
  }

  /** The job as it was when the events began that count. */
  beginning: Job;

  begin(): void {
    this.beginning = this.job;
  }

  get node(): string {
    const node = pathOf(this.snapshot.value);
    if (node !== nodeOf(this.job.plan, placeOf(this.job))) throw new Error(`the machine is at ${node}`);
    return node;
  }

  private goTo(node: string): void {
    for (let turns = 0; this.node !== node; turns++) {
      if (turns > 2000) throw new Error(`no way to ${node}`);
      this.mono += this.node.includes('wait') ? 48 * 3_600_000 : 5 * SECONDS;
      this.snapshot = this.driver.give(this.snapshot, wayForward(this.job), this.now()).snapshot;
    }
    // Somebody who begins at a tightening has said that there is time for it.
    if (isTimeAsked(this.job))
      this.snapshot = this.driver.give(this.snapshot, wayForward(this.job), this.now()).snapshot;
  }

  play(event: Event): Turn {
    this.mono += 2 * SECONDS;
    if (typeof event === 'string') return this.hear(event, event, false);
    if ('radio' in event) return this.hear(`radio: ${event.radio}`, event.radio, false);
    if ('late' in event) return this.hear(`late: ${event.late}`, event.late, true);
    if ('wait' in event) {
      this.mono += event.wait;
      return this.turn('wait', '', told());
    }
    if ('reopen' in event) {
      this.mono += event.reopen;
      this.session++;
      this.snapshot = this.driver.report(this.snapshot, [{ kind: 'session-opened' }], this.now()).snapshot;
      return this.turn('reopen', '', told());
    }
    if ('owned' in event) {
      const body = { kind: 'wrenches-owned' as const, wrenches: event.owned };
      this.snapshot = this.driver.report(this.snapshot, [body], this.now()).snapshot;
      return this.turn('wrenches', '', told());
    }
    const decision = chooseWrench(this.job, event.tool, event.wrench, this.now());
    this.snapshot = this.driver.report(this.snapshot, decision.entries, this.now()).snapshot;
    return this.turn(`wrench: ${event.wrench.say}`, '', decision);
  }

  private now(): Moment {
    return { at: Date.UTC(2026, 2, 2, 8) + this.mono, mono: this.mono, session: `s${this.session}` };
  }

  private hear(said: string, words: string, isLate: boolean): Turn {
    const revision = revisionOf(this.job);
    const live = this.tongue.liveGrammar(offersOf(this.job), revision);
    if (isLate && this.revisionBefore === revision) throw new Error(`"${words}" is not late: nothing has changed`);
    const what = isLate
      ? staleHearing(live, words, this.tongue.interpret)
      : hearing(this.tongue.interpret(live, words));
    const decision = this.take(what);
    this.revisionBefore = revision;
    return this.turn(said, what.kind === 'command' ? what.command.rule : `rejected: ${what.why}`, decision);
  }

  private take(what: Hearing): Decision {
    if (what.kind === 'rejected') return { ...told(...what.replies), verdict: 'refused' };
    const decision = decide(this.job, what.command, this.now());
    this.snapshot = this.driver.give(this.snapshot, what.command, this.now()).snapshot;
    return decision;
  }

  private turn(said: string, heard: string, { verdict, replies }: Decision): Turn {
    const codes = replies.map((r) => r.code).join(' ');
    return { said, heard, verdict, replies: codes, node: this.node, ...this.tongue.phrase(replies) };
  }
}

const tongues = new Map<string, Tongue>();

/** Read once each: there are many sessions. */
function tongueOf(language: string): Tongue {
  const tongue = tongues.get(language) ?? readTongue(language);
  tongues.set(language, tongue);
  return tongue;
}

function documentOf(name: string): Procedure {
  const own = `tests/cases/procedures/${name}.yaml`;
  const file = existsSync(own) ? own : `procedures/${name}.yaml`;
  const checked = checkDocument(readFileSync(file, 'utf8'), file);
  if (!checked.ok) throw new Error(JSON.stringify(checked.error, null, 1));
  return checked.value;
}

/** What a session left: fasteners that are not what they were at its beginning, and what is owed more or less. */
export function finalOf(session: Session): Final {
  const { job, beginning, node } = session;
  const before = stateOf(beginning);
  const after = stateOf(job);
  const bolts = Object.fromEntries(Object.entries(after.bolts).filter(([pass, is]) => before.bolts[pass] !== is));
  const ends = [
    ...after.ends.filter((e) => !before.ends.includes(e)).map((e) => `+ ${e}`),
    ...before.ends.filter((e) => !after.ends.includes(e)).map((e) => `- ${e}`),
  ];
  return { status: job.status, node, bolts, ends };
}

function stateOf(job: Job) {
  const bolts: Record<string, string> = {};
  for (const [step, { passes }] of job.plan.steps)
    for (const pass of passes) {
      const state = job.tightening.get(step)?.get(pass.id);
      const known = pass.order.flatMap((n) => {
        const is = state && boltState(state, n);
        return is && is.kind !== 'open' ? [`${n} ${inWords(is)}`] : [];
      });
      bolts[`${step}/${pass.id}`] = known.join(', ');
    }
  const ends = [...job.ends.values()].map((e) => (e.why === 'dropped' ? 'something dropped' : `${e.what} (${e.why})`));
  return { bolts, ends };
}

function inWords(is: BoltState): string {
  switch (is.kind) {
    case 'open':
      return 'open';
    case 'partial':
      return `at ${is.degrees}`;
    case 'done':
      return `done${is.inOrder ? '' : ' out of order'}${is.doubtful ? ' in doubt of the wrench' : ''}`;
    case 'unknown':
      return 'unknown';
    case 'held':
      return `held (${is.fault})`;
  }
}
