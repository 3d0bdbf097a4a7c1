import type { LiveGrammar } from '../../core/language/grammar';
import type { RecogniserEvent } from '../../core/ports';
import type { Ear } from '../../speech/ear/ear';
import type { BenchSet, Clip } from './bench-sets';
import { inNoise, seeded } from './mixing';

export type Answer = 'right' | 'wrong' | 'rejected';

export type Row = {
  readonly set: string;
  readonly snrDb: number | null;
  readonly answers: readonly { readonly id: string; readonly answer: Answer; readonly heard: readonly string[] }[];
  /** Seconds of work for a second of sound. */
  readonly realTimeFactor: number;
};

const BLOCK = 480;

/** Plays every clip of a set, one after another in one stream, to an ear that remembers nothing from before. */
export async function runSet(ear: Ear, set: BenchSet, snrDb: number | null, noise: Float32Array): Promise<Row> {
  await ear.listen(16_000);
  let armed: LiveGrammar | null = null;
  // The offsets into the noise depend on nothing but the condition, so that any two runs hear the same.
  const random = seeded(1000 + (snrDb ?? 99));
  let sound = 0;
  let work = 0;
  const answers = set.clips.map((clip) => {
    const stream = inNoise(clip.sound(), noise, snrDb, random);
    if (clip.live !== armed) ear.arm(clip.live);
    armed = clip.live;
    const began = performance.now();
    const events = play(ear, stream);
    work += performance.now() - began;
    sound += stream.length / 16;
    return { id: clip.id, ...answerOf(clip, events) };
  });
  return { set: set.name, snrDb, answers, realTimeFactor: work / sound };
}

function play(ear: Ear, stream: Float32Array): readonly RecogniserEvent[] {
  const events: RecogniserEvent[] = [];
  for (let at = 0; at < stream.length; at += BLOCK) events.push(...ear.push(stream.subarray(at, at + BLOCK)));
  return events;
}

function answerOf(clip: Clip, events: readonly RecogniserEvent[]): { answer: Answer; heard: readonly string[] } {
  const heard = events.flatMap((event) => (event.type === 'heard' ? [event.words] : []));
  const [only, ...more] = heard;
  if (only === undefined) return { answer: 'rejected', heard };
  return { answer: more.length === 0 && clip.isRight(only) ? 'right' : 'wrong', heard };
}
