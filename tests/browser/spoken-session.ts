import { readFileSync } from 'node:fs';
import type { Entry } from '../../src/core/job/entry';
import { fold } from '../../src/core/job/evolve';
import { placeOf } from '../../src/core/job/place';
import { nodeOf, type Plan } from '../../src/core/job/plan';
import { boltState, passState } from '../../src/core/job/tightening';
import type { TestSpeaker } from './speaker';

export type SpokenTurn = {
  readonly say?: string;
  /** Talk in the bay that is meant for nobody: it must change nothing. */
  readonly radio?: string;
  readonly speaker?: TestSpeaker;
  readonly expect: {
    readonly command?: string;
    readonly rejected?: true;
    readonly node?: string;
    readonly bolts?: readonly number[];
  };
};

export type SpokenSession = { readonly why: string; readonly procedure: string; readonly turns: readonly SpokenTurn[] };

export const readSession = (name: string): SpokenSession =>
  JSON.parse(readFileSync(`tests/cases/spoken/${name}.json`, 'utf8')) as SpokenSession;

/** What the log says came of one utterance. Two hosts that hear the same give the same outcomes. */
export type Outcome = {
  readonly command: string | null;
  readonly replies: readonly string[];
  readonly node: string;
  readonly bolts: readonly number[];
};

/** The outcome of everything from entry `from` on. */
export function outcomeOf(plan: Plan, entries: readonly Entry[], from: number): Outcome {
  const fresh = entries.slice(from);
  const heard = fresh.findLast((e) => e.kind === 'heard');
  const job = fold(plan, entries);
  const states = job.tightening.get('tighten-left');
  const first = states && passState(states, 'first');
  const bolts = first ? [...first.bolts.keys()].filter((n) => boltState(first, n).kind === 'done') : [];
  return {
    command: heard?.kind === 'heard' ? heard.command : null,
    replies: fresh.flatMap((e) => (e.kind === 'said' ? [e.code] : [])),
    node: nodeOf(plan, placeOf(job)),
    bolts: bolts.sort((a, b) => a - b),
  };
}
