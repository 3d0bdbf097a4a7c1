import type { LiveGrammar, Meaning } from '../../core/language/grammar';
import { interpret } from '../../core/language/interpret';
import { samples } from '../../core/language/sample';
import type { Flite } from '../../voice/flite/flite';
import type { Speaker } from '../../voice/flite/speakers';
import { decodeWav } from '../../voice/flite/wav';
import { foreignGrammar, wordGrammar } from './bench-grammars';
import type { Corpus, Recording } from './corpus';
import { seeded } from './mixing';
import { orderSlots, slotValuesOf } from './order-slots';

export type Clip = {
  readonly id: string;
  readonly sound: () => Float32Array;
  readonly isRight: (words: string) => boolean;
};

export type BenchSet = {
  readonly name: string;
  readonly live: LiveGrammar;
  readonly snrs: readonly (number | null)[];
  readonly clips: readonly Clip[];
};

const NOISES = [null, 24, 18, 12, 6] as const;
const never = (): boolean => false;

/** What is said to the ear of recordings of people: their own grammars, and all of it against ours. */
export function recordedSets(corpus: Corpus, bench: LiveGrammar): readonly BenchSet[] {
  const of = (set: Recording['set']): readonly Recording[] => corpus.recordings.filter((one) => one.set === set);
  const clip = (one: Recording, isRight: Clip['isRight']): Clip => ({
    id: one.file,
    sound: () => corpus.sound(one.file),
    isRight,
  });
  const spoken = (all: readonly Recording[], text: (one: Recording) => string | null | undefined): readonly Clip[] =>
    all.map((one) => clip(one, (words) => words === text(one)));
  const said = ({ text }: Recording): string | null | undefined => text;
  const textsOf = (all: readonly Recording[]): readonly string[] => [...new Set(all.flatMap(({ text }) => text ?? []))];

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
    return { id: `kitchen ${n}`, sound: () => kitchen.slice(from, from + 80_000), isRight: never };
  });

  const random = seeded(60);
  const hour = Array.from({ length: 60 }, (_, n): Clip => {
    const [from, gain] = [Math.floor(random() * kitchen.length), 10 ** ((random() * 24 - 12) / 20)];
    const minute = (): Float32Array =>
      Float32Array.from({ length: 960_000 }, (_, i) => gain * (kitchen[(from + i) % kitchen.length] ?? 0));
    return { id: `minute ${n}, ${gain.toFixed(2)} as loud`, sound: minute, isRight: never };
  });

  return [
    {
      name: 'orders',
      live: foreignGrammar(corpus.text('orders.jsgf')),
      snrs: NOISES,
      clips: orders.map((one) => clip(one, (heard) => orderSlots(heard, values).join() === wanted(one))),
    },
    { name: 'orders-to-bench', live: bench, snrs: [null, 12], clips: orders.map((one) => clip(one, never)) },
    { name: 'others-to-bench', live: bench, snrs: [null], clips: others.map((one) => clip(one, never)) },
    { name: 'noise-to-bench', live: bench, snrs: [null], clips: noises },
    // One recording, looped from seeded places, 12 dB softer to 12 dB louder.
    { name: 'noise-hour', live: bench, snrs: [null], clips: hour },
    {
      name: 'stop-to-bench',
      live: bench,
      snrs: [null, 12],
      clips: spoken(
        words.filter(({ text }) => text === 'stop'),
        said,
      ),
    },
    { name: 'words', live: wordGrammar(textsOf(words)), snrs: [null], clips: spoken(words, said) },
    { name: 'digits', live: wordGrammar(textsOf(digits)), snrs: [null], clips: spoken(digits, said) },
  ];
}

/** Our own commands by synthetic speakers. */
export function spokenSets(flite: Flite, bench: LiveGrammar): readonly BenchSet[] {
  return (['rms', 'kal16', 'awb'] as const).map((speaker) => spokenSet(flite, bench, speaker));
}

/** Our own commands by one of them. A command is right when it means the same, whatever its words. */
export function spokenSet(flite: Flite, bench: LiveGrammar, speaker: Speaker): BenchSet {
  return {
    name: `commands-${speaker}`,
    live: bench,
    snrs: [null, 12, 6],
    clips: samples(bench, bench.commands.length * 4).map(({ words, meaning }) => ({
      id: words,
      sound: () => say(flite, words, speaker),
      isRight: (heard) => same(interpret(bench, heard), meaning),
    })),
  };
}

const same = (a: Meaning, b: Meaning): boolean => JSON.stringify(a) === JSON.stringify(b);

export function say(flite: Flite, text: string, speaker: Speaker): Float32Array {
  const rendered = flite.render({ text, speaker, rate: 1 });
  if (!rendered.ok) throw new Error(rendered.error.detail);
  const decoded = decodeWav(rendered.value.wav);
  if (!decoded.ok) throw new Error(decoded.error.detail);
  // Full scale is no way to speak into a microphone.
  return decoded.value.samples.map((sample) => sample / 2);
}
