import type { LiveGrammar, Meaning } from '../../core/language/grammar';
import { interpret } from '../../core/language/interpret';
import { type Sample, samples } from '../../core/language/sample';
import type { Flite } from '../../voice/flite/flite';
import type { Speaker } from '../../voice/flite/speakers';
import { decodeWav } from '../../voice/flite/wav';
import { foreignGrammar, wordGrammar } from './bench-grammars';
import type { Corpus, Recording } from './corpus';
import type { InPlace } from './job-commands';
import { seeded } from './mixing';
import { orderSlots, slotValuesOf } from './order-slots';

export type Clip = {
  readonly id: string;
  /** What can be said when it is played. */
  readonly live: LiveGrammar;
  readonly sound: () => Float32Array;
  readonly isRight: (words: string) => boolean;
};

export type BenchSet = {
  readonly name: string;
  readonly snrs: readonly (number | null)[];
  readonly clips: readonly Clip[];
};

const NOISES = [null, 24, 18, 12, 6] as const;
const SPOKEN_NOISES = [null, 12, 6] as const;
const never = (): boolean => false;

/** What is said to the ear of recordings of people: their own grammars, and all of it against ours. */
export function recordedSets(corpus: Corpus, bench: LiveGrammar): readonly BenchSet[] {
  const of = (set: Recording['set']): readonly Recording[] => corpus.recordings.filter((one) => one.set === set);
  const clip = (live: LiveGrammar, one: Recording, isRight: Clip['isRight']): Clip => ({
    id: one.file,
    live,
    sound: () => corpus.sound(one.file),
    isRight,
  });
  const said = (live: LiveGrammar, all: readonly Recording[]): readonly Clip[] =>
    all.map((one) => clip(live, one, (words) => words === one.text));
  const unmeant = (all: readonly Recording[]): readonly Clip[] => all.map((one) => clip(bench, one, never));
  const wordsOf = (all: readonly Recording[]): LiveGrammar =>
    wordGrammar([...new Set(all.flatMap(({ text }) => text ?? []))]);

  const orders = of('orders');
  const values = slotValuesOf(orders);
  const wanted = (one: Recording): string =>
    Object.entries(one.slots ?? {})
      .map(([slot, value]) => `${slot}=${value}`)
      .sort()
      .join();
  const words = of('words').filter(({ text }) => typeof text === 'string');
  const others = of('words').filter(({ text }) => text === null);
  const digits = of('digits');
  const kitchen = corpus.sound('noise/kitchen.wav');
  const noises = Array.from({ length: 20 }, (_, n): Clip => {
    const from = Math.floor((n * (kitchen.length - 80_000)) / 20);
    return { id: `kitchen ${n}`, live: bench, sound: () => kitchen.slice(from, from + 80_000), isRight: never };
  });

  const random = seeded(60);
  const hour = Array.from({ length: 60 }, (_, n): Clip => {
    const [from, gain] = [Math.floor(random() * kitchen.length), 10 ** ((random() * 24 - 12) / 20)];
    const minute = (): Float32Array =>
      Float32Array.from({ length: 960_000 }, (_, i) => gain * (kitchen[(from + i) % kitchen.length] ?? 0));
    return { id: `minute ${n}, ${gain.toFixed(2)} as loud`, live: bench, sound: minute, isRight: never };
  });

  const orderGrammar = foreignGrammar(corpus.text('orders.jsgf'));
  return [
    {
      name: 'orders',
      snrs: NOISES,
      clips: orders.map((one) => clip(orderGrammar, one, (heard) => orderSlots(heard, values).join() === wanted(one))),
    },
    { name: 'orders-to-bench', snrs: [null, 12], clips: unmeant(orders) },
    { name: 'others-to-bench', snrs: [null], clips: unmeant(others) },
    { name: 'noise-to-bench', snrs: [null], clips: noises },
    // One recording, looped from seeded places, 12 dB softer to 12 dB louder.
    { name: 'noise-hour', snrs: [null], clips: hour },
    {
      name: 'stop-to-bench',
      snrs: [null, 12],
      clips: said(
        bench,
        words.filter(({ text }) => text === 'stop'),
      ),
    },
    { name: 'words', snrs: [null], clips: said(wordsOf(words), words) },
    { name: 'digits', snrs: [null], clips: said(wordsOf(digits), digits) },
  ];
}

/** Our own commands by synthetic speakers, in the middle of a pass and all through a job. */
export function spokenSets(flite: Flite, bench: LiveGrammar, job: readonly InPlace[]): readonly BenchSet[] {
  const speakers = ['rms', 'kal16', 'awb'] as const;
  return [
    ...speakers.map((speaker) => spokenSet(flite, bench, speaker)),
    ...speakers.map((speaker) => ({
      name: `job-${speaker}`,
      snrs: SPOKEN_NOISES,
      clips: job.map(({ live, sample }) => spokenClip(flite, live, sample, speaker)),
    })),
  ];
}

/** What can be said in the middle of a pass, by one of them. */
export function spokenSet(flite: Flite, bench: LiveGrammar, speaker: Speaker): BenchSet {
  const clips = samples(bench, bench.commands.length * 4).map((sample) => spokenClip(flite, bench, sample, speaker));
  return { name: `commands-${speaker}`, snrs: SPOKEN_NOISES, clips };
}

/** A command is right when it means the same, whatever its words. */
const spokenClip = (flite: Flite, live: LiveGrammar, { words, meaning }: Sample, speaker: Speaker): Clip => ({
  id: words,
  live,
  sound: () => say(flite, words, speaker),
  isRight: (heard) => same(interpret(live, heard), meaning),
});

const same = (a: Meaning, b: Meaning): boolean => JSON.stringify(a) === JSON.stringify(b);

export function say(flite: Flite, text: string, speaker: Speaker): Float32Array {
  const rendered = flite.render({ text, speaker, rate: 1 });
  if (!rendered.ok) throw new Error(rendered.error.detail);
  const decoded = decodeWav(rendered.value.wav);
  if (!decoded.ok) throw new Error(decoded.error.detail);
  // Full scale is no way to speak into a microphone.
  return decoded.value.samples.map((sample) => sample / 2);
}
