import { readFileSync } from 'node:fs';
import { earRecogniser } from '../../src/cli/ear-recogniser';
import { readTongue } from '../../src/cli/tongue-files';
import { openWorkshop } from '../../src/cli/workshop';
import type { Entry } from '../../src/core/job/entry';
import { fold } from '../../src/core/job/evolve';
import { placeOf } from '../../src/core/job/place';
import { nodeOf, type Plan, planOf } from '../../src/core/job/plan';
import { boltState, passState } from '../../src/core/job/tightening';
import { shipped } from '../core/job/workbench';
import { spoken, type TestSpeaker } from './speaker';

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

export const planOfSession = (session: SpokenSession): Plan => planOf(shipped(session.procedure));

/** The session played to the ear, grammar and machine of the app in Node. */
export async function hearSession(session: SpokenSession): Promise<readonly Outcome[]> {
  const tongue = readTongue('en');
  const ear = await earRecogniser(tongue);
  const opened = await openWorkshop(`procedures/${session.procedure}.yaml`, tongue, ear);
  if (!opened.ok) throw new Error(JSON.stringify(opened.error));
  const desk = opened.value;
  const outcomes: Outcome[] = [];
  for (const turn of session.turns) {
    const before = desk.snapshot.entries.length;
    await ear.play(await spoken(turn.say ?? turn.radio ?? '', turn.speaker));
    await desk.idle();
    outcomes.push(outcomeOf(desk.job.plan, desk.snapshot.entries, before));
  }
  desk.close();
  return outcomes;
}
