import { earRecogniser } from '../../src/cli/ear-recogniser';
import { readTongue } from '../../src/cli/tongue-files';
import { openWorkshop } from '../../src/cli/workshop';
import type { Entry } from '../../src/core/job/entry';
import { fold } from '../../src/core/job/evolve';
import type { Desk } from '../../src/machine/desk';
import { nextWords } from '../browser/next-words';
import { spoken, type TestSpeaker } from '../browser/speaker';
import { bayNoise } from './bay-noise';
import { chance } from './chance';

const RATE_HZ = 16_000;
const PROCEDURE = 'procedures/tarnbeck-head-slice.yaml';
const SPEAKERS: readonly TestSpeaker[] = ['rms', 'awb', 'kal16'];

/** Asked again and again in a long job; none of them may move it. */
const QUESTIONS = ["what's next", 'where am i', 'how many to go', 'what is still off', 'say that again'];

/** Talk in the bay that is meant for nobody. */
const RADIO = [
  'and now the weather for the weekend cloudy with a chance of rain',
  'next on the programme we talk to a man who keeps bees',
  'traffic is heavy on the ring road this morning',
  'he said he would be done by seven but nobody believed him',
  'you are listening to the morning show',
];

/** What one stretch of the shift came to. */
export type Stretch = {
  readonly simulatedHours: number;
  readonly entries: number;
  readonly heapMb: number;
  readonly rssMb: number;
  /** Of what was said since the stretch before: how many, and how many were taken for what they were. */
  readonly said: number;
  readonly right: number;
  /** Seconds of processor time for a second of sound since the stretch before: other work on the machine is not in it. */
  readonly realTimeFactor: number;
  /** Median and 95th percentile of processor time for a sentence, milliseconds a second of its sound. */
  readonly sentence: { readonly median: number; readonly p95: number };
};

export type Shift = {
  readonly simulatedHours: number;
  readonly realMinutes: number;
  readonly jobs: number;
  readonly said: number;
  /** Commands that were not taken the first time: the person says them again. */
  readonly missed: number;
  /** Something else was heard than was said. */
  readonly misheard: number;
  /** Commands taken from noise or from the radio, in the words they were taken for. */
  readonly fromNobody: readonly string[];
  /** Entries that moved a job when nobody had asked for it. The only number that must be nought. */
  readonly movedByNobody: number;
  readonly stretches: readonly Stretch[];
};

/** Milliseconds of processor time that this process has had, in all its threads. */
function worked(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

const quantile = (all: readonly number[], share: number): number =>
  all.toSorted((a, b) => a - b)[Math.floor(share * (all.length - 1))] ?? 0;

const heardIn = (entries: readonly Entry[]): readonly string[] =>
  entries.flatMap((e) => (e.kind === 'heard' && e.by === 'voice' ? [e.words] : []));

const TALK: ReadonlySet<Entry['kind']> = new Set(['heard', 'rejected', 'said', 'asked', 'question-dropped']);
const moves = (entries: readonly Entry[]): number => entries.filter(({ kind }) => !TALK.has(kind)).length;

/**
 * A long shift at one bench: commands and questions by three speakers, with noise and radio between them, through the
 * ear, grammar, machine and log of the app. Time is that of the sound, so a shift lasts as long as the ear takes.
 */
export async function longShift(hours: number, seed: number, tell: (stretch: Stretch) => void): Promise<Shift> {
  const began = performance.now();
  const luck = chance(seed);
  const { below, of } = luck;
  const tongue = readTongue('en');
  const ear = await earRecogniser(tongue);
  let ms = 0;
  let workedMs = 0;
  const clock = { wall: () => 1_700_000_000_000 + ms, mono: () => ms };

  /** Answers with the processor time it took, in milliseconds a second of sound. */
  const listen = async (sound: { samples: Float32Array<ArrayBuffer>; rateHz: number }): Promise<number> => {
    const from = worked();
    await ear.play(sound);
    const took = worked() - from;
    workedMs += took;
    const seconds = sound.samples.length / sound.rateHz + 1.6;
    ms += Math.round(seconds * 1000);
    return took / seconds;
  };
  const begin = async (): Promise<Desk> => {
    const opened = await openWorkshop(PROCEDURE, tongue, ear, clock);
    if (!opened.ok) throw new Error(JSON.stringify(opened.error));
    return opened.value;
  };
  const during = async (desk: Desk, work: () => Promise<void>): Promise<readonly Entry[]> => {
    const before = desk.snapshot.entries.length;
    await work();
    await desk.idle();
    return desk.snapshot.entries.slice(before);
  };

  let desk = await begin();
  const count = { jobs: 1, said: 0, missed: 0, misheard: 0, movedByNobody: 0 };
  const fromNobody: string[] = [];
  const stretches: Stretch[] = [];
  let sentences: number[] = [];
  let since = { ms: 0, workedMs: 0, said: 0, right: 0 };
  const measure = (): void => {
    globalThis.gc?.();
    const { heapUsed, rss } = process.memoryUsage();
    const { said, missed, misheard } = count;
    const now = { ms, workedMs, said, right: said - missed - misheard };
    const stretch = {
      simulatedHours: ms / 3_600_000,
      entries: desk.snapshot.entries.length,
      heapMb: heapUsed / 1e6,
      rssMb: rss / 1e6,
      said: now.said - since.said,
      right: now.right - since.right,
      realTimeFactor: (now.workedMs - since.workedMs) / Math.max(1, now.ms - since.ms),
      sentence: { median: quantile(sentences, 0.5), p95: quantile(sentences, 0.95) },
    };
    since = now;
    sentences = [];
    stretches.push(stretch);
    tell(stretch);
  };

  while (ms < hours * 3_600_000) {
    const quiet = await during(desk, async () => {
      const seconds = 2 + below(16);
      const samples = below(2) === 0 ? bayNoise(seconds, RATE_HZ, luck) : new Float32Array(RATE_HZ * seconds);
      await listen({ samples, rateHz: RATE_HZ });
      if (below(3) === 0) await listen(await spoken(of(RADIO), of(SPEAKERS)));
    });
    fromNobody.push(...heardIn(quiet));
    count.movedByNobody += moves(quiet);

    const words = below(8) === 0 ? nextWords(fold(desk.job.plan, desk.snapshot.entries)) : of(QUESTIONS);
    if (words === null) {
      desk.close();
      desk = await begin();
      count.jobs += 1;
      continue;
    }
    const isQuestion = QUESTIONS.includes(words);
    count.said += 1;
    const came = await during(desk, async () => {
      sentences.push(await listen(await spoken(words, of(SPEAKERS))));
    });
    const heard = heardIn(came);
    if (heard.length === 0) count.missed += 1;
    else if (heard.length > 1 || heard[0] !== words) count.misheard += 1;
    if (isQuestion) count.movedByNobody += moves(came);
    if (count.said % 50 === 0) measure();
  }
  measure();
  desk.close();
  return {
    simulatedHours: ms / 3_600_000,
    realMinutes: (performance.now() - began) / 60_000,
    ...count,
    fromNobody,
    stretches,
  };
}
