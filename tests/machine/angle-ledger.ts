import type { Entry } from '../../src/core/job/entry';
import type { Plan } from '../../src/core/job/plan';
import { passIn, stepIn } from '../../src/core/job/plan';
import { sinceSlacken } from '../../src/core/job/tightening';

type Given = 'none' | 'partly' | 'whole' | 'doubt';
type At = { readonly step: string; readonly pass: string; readonly bolt: number };

/**
 * What each fastener has had of each angle, counted from the log alone and without the fold: the other witness to
 * "an angle is never given twice". `judge` takes the entries of one decision and says what they break.
 */
export class AngleLedger {
  private readonly given = new Map<string, Given>();
  private readonly before = new Map<number, readonly [string, Given]>();
  /** Doubts that somebody only said, by their entries: with the word the doubt is taken back too. */
  private readonly onlySaid = new Map<number, string>();

  constructor(private readonly plan: Plan) {}

  judge(entries: readonly Entry[]): readonly string[] {
    const taken: string[] = [];
    const broken = entries.flatMap((e) => this.take(e, taken));
    return [
      ...broken,
      ...taken.filter((key) => this.given.get(key) !== 'doubt').map((key) => `${key} undone, not in doubt`),
    ];
  }

  /** A new session is no entry about a bolt, but leaves one in doubt. */
  doubt(at: At): void {
    const key = keyOf(at);
    this.given.set(key, 'doubt');
    for (const [seq, of] of this.onlySaid) if (of === key) this.onlySaid.delete(seq);
  }

  private take(e: Entry, taken: string[]): readonly string[] {
    switch (e.kind) {
      case 'undone':
        return this.undo(e.target, taken);
      case 'all-slackened':
        for (const key of this.given.keys()) if (key.startsWith(`${e.step}/`)) this.given.set(key, 'none');
        return [];
      case 'pass-repeated':
        return passIn(this.plan, e.step, e.pass).kind === 'angle' ? ['an angle pass repeated'] : [];
      case 'bolt-done':
      case 'bolt-turned':
      case 'bolt-proved':
      case 'swing-proved':
      case 'bolt-settled':
      case 'bolt-unknown':
      case 'bolt-fault':
      case 'bolt-replaced':
        return this.bolt(e);
      default:
        return [];
    }
  }

  private bolt(e: Entry & At): readonly string[] {
    if ((e.kind === 'bolt-fault' || e.kind === 'bolt-replaced') && e.action === 'restart-bolt') {
      if (!(e.kind === 'bolt-fault' && e.fault === 'snapped')) this.restart(e);
      return [];
    }
    if (passIn(this.plan, e.step, e.pass).kind !== 'angle') return [];
    const key = keyOf(e);
    const was = this.given.get(key) ?? 'none';
    this.before.set(e.seq, [key, was]);
    if (e.kind === 'bolt-unknown' && e.why === 'not-sure' && was !== 'doubt') this.onlySaid.set(e.seq, key);
    const [next, broken] = after(e, was);
    this.given.set(key, next);
    return broken ? [`${key}: ${e.kind} after ${was}`] : [];
  }

  private restart({ step, pass, bolt }: At): void {
    const { passes } = stepIn(this.plan, step);
    const index = passes.findIndex((p) => p.id === pass);
    for (const p of passes.slice(sinceSlacken(passes, index), index + 1))
      this.given.set(keyOf({ step, pass: p.id, bolt }), 'none');
  }

  private undo(target: number, taken: string[]): readonly string[] {
    const found = this.before.get(target);
    if (!found) return [];
    const [key, was] = found;
    const isLifted = this.onlySaid.has(target);
    if (!isLifted && (this.given.get(key) !== 'doubt' || was !== 'none')) taken.push(key);
    this.given.set(key, was);
    return [];
  }
}

const keyOf = (at: At): string => `${at.step}/${at.pass}/${at.bolt}`;

/** What the fastener has after an entry about it, and whether the entry could not be. */
function after(e: Entry, was: Given): readonly [Given, boolean] {
  switch (e.kind) {
    case 'bolt-done':
      return ['whole', was === 'whole' || was === 'doubt'];
    case 'bolt-turned':
      return ['partly', was === 'whole' || was === 'doubt'];
    case 'bolt-unknown':
      return ['doubt', false];
    case 'bolt-proved':
      return [e.verdict === 'done' ? 'whole' : 'none', was !== 'doubt'];
    case 'swing-proved':
      return ['partly', was !== 'doubt'];
    case 'bolt-settled':
      return ['whole', e.as !== 'done'];
    case 'bolt-fault':
      return [e.action === 'accept' ? 'whole' : was, e.action === 'redo-bolt' || e.action === 'repeat-pass'];
    default:
      return [was, false];
  }
}
