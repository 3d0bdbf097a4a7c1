import { readdirSync, readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { onward } from '../../src/cli/authoring/onward';
import { placesOf, type ReachedPlace } from '../../src/cli/authoring/places';
import { momentOf, type Trial } from '../../src/cli/authoring/trial';
import { readTongue } from '../../src/cli/tongue-files';
import { announce } from '../../src/core/job/announce';
import { passAt } from '../../src/core/job/decide/bolt';
import { placeOf } from '../../src/core/job/place';
import { nodeOf } from '../../src/core/job/plan';
import type { Procedure } from '../../src/core/procedure/procedure';
import type { Tongue } from '../../src/core/tongue';
import type { DeskView } from '../../src/machine/desk-parts';
import { EAR_AT_FIRST } from '../../src/machine/ear-view';
import { benchScreen } from '../../src/shell/bench-screen';
import { sayer } from '../../src/ui/words/say';
import type { ScreenWords } from '../../src/ui/words/words';
import { shipped } from '../core/job/workbench';
import type { BenchData } from './bench-page/bench-page';

/** A Bench as some place of a shipped procedure has it. */
export type PlacedBench = {
  readonly where: string;
  readonly screen: BenchData;
  /** What its sheet of sentences holds, worked out when it is asked for. */
  readonly tappable: () => NonNullable<BenchData['sentences']>;
};

/** One language, with the texts of its screens, its notices too. */
export type Spoken = { readonly tongue: Tongue; readonly words: ScreenWords };

export function spokenIn(language: string): Spoken {
  const words: ScreenWords = parse(readFileSync(`grammars/${language}/screen.yaml`, 'utf8'));
  return { tongue: readTongue(language), words };
}

export const shippedIn = (language: string): readonly Procedure[] =>
  readdirSync('procedures')
    .filter((file) => file.endsWith('.yaml'))
    .map((file) => shipped(file.slice(0, -'.yaml'.length)))
    .filter((procedure) => procedure.language === language);

/**
 * The Bench at every step and part of a pass, where a pass is worked also at the bolt with most to tell, and at the ways
 * beside the work that look another way than all before.
 */
export function benchesOf(procedure: Procedure, spoken: Spoken): readonly PlacedBench[] {
  const seen = new Set<string>();
  return placesOf(procedure)
    .toSorted((a, b) => Number(a.after !== '') - Number(b.after !== ''))
    .flatMap((place) => [drawn(place, spoken), ...longestBolt(place, spoken)])
    .flatMap(({ at, ...bench }) => {
      const isSeen = seen.has(looks(bench.screen));
      seen.add(looks(bench.screen));
      const where = [procedure.id, at.node, at.after].filter(Boolean).join(' ');
      return isSeen && at.after !== '' ? [] : [{ where, ...bench }];
    });
}

/** What takes room on a Bench, but for its head and foot. */
function looks({ view }: BenchData): string {
  const { line, value, valueAlso, hazards, buttons, mood, wrenches } = view;
  return JSON.stringify([line, value, valueAlso, hazards, buttons, mood, wrenches, view.drawing?.say]);
}

type Drawn = { readonly at: ReachedPlace } & Pick<PlacedBench, 'screen' | 'tappable'>;

function drawn(at: ReachedPlace, { tongue, words }: Spoken): Drawn {
  const say = sayer(words);
  const seen: DeskView = {
    job: at.job,
    entries: [],
    said: tongue.phrase(announce(at.job, at.now)),
    saidCode: '',
    heard: {
      words: tongue.teaching(at.job).get('say-again') ?? '',
      score: 1,
      by: 'voice',
      did: 'command',
      outcome: 'say-again',
    },
    ear: { ...EAR_AT_FIRST, state: 'listening' },
    live: tongue.liveGrammar(at.offers, ''),
    earsOff: false,
    notSaved: false,
    talking: false,
  };
  const now = {
    seen,
    moment: at.now,
    isSpeaking: false,
    isShut: false,
    torqueUnit: 'as-printed',
    volumeUnit: 'as-printed',
  } as const;
  const screen = benchScreen(tongue, words, say, now);
  if (screen.name !== 'bench') throw new Error(`the screen of the Bench is ${screen.name}`);
  const { tappable, ...data } = screen;
  return { at, screen: data, tappable };
}

/** Of the bolts of a pass that is reached, the one whose line is longest. */
function longestBolt(place: ReachedPlace, spoken: Spoken): readonly Drawn[] {
  if (place.after !== '' || passAt(place.job)?.part !== 'work') return [];
  let longest = drawn(place, spoken);
  let trial: Trial | undefined = { job: place.job, ms: place.now.mono };
  for (trial = onward(trial, new Map()); trial; trial = onward(trial, new Map())) {
    if (nodeOf(trial.job.plan, placeOf(trial.job)) !== place.node) break;
    const next = drawn({ ...place, job: trial.job, now: momentOf(trial) }, spoken);
    if (next.screen.view.line.length > longest.screen.view.line.length) longest = next;
  }
  return [longest];
}
