import type { Decoder } from './decoder';
import { EAR_FRAME } from './front-end';
import { oneWay } from './one-way';
import { loweredInNoise } from './rejection';
import type { Tuning } from './tuning';
import type { Utterance } from './utterance';

type LoneStopTuning = Pick<Tuning, 'loneStop' | 'inNoise' | 'ownCost' | 'spread'>;

/**
 * A stop said alone is short, and easily lost to a longer command or to the filler, and it is the one word that must not
 * be. What was refused is therefore searched once more, for a stop and nothing else, under bars of its own.
 */
export class LoneStop {
  readonly #decoder: Decoder;
  readonly #word: string;
  readonly #tuning: LoneStopTuning;

  constructor(decoder: Decoder, word: string, tuning: LoneStopTuning) {
    this.#decoder = decoder;
    this.#word = word;
    this.#tuning = tuning;
  }

  /** Leaves its own search in the decoder. `loopScore` is what the bare phones scored on the same sound. */
  find(
    sound: Float32Array,
    loopScore: number,
    utterance: Utterance,
  ): { readonly words: string; readonly score: number } | null {
    const { loneStop, inNoise, ownCost, spread } = this.#tuning;
    const frames = sound.length / EAR_FRAME;
    if (frames > loneStop.longestFrames || utterance.voice < loneStop.leastVoice) return null;
    this.#decoder.search({ commands: oneWay([this.#word]), decoys: [], filler: null });
    const { words, score } = this.#decoder.decodeWhole(sound);
    const [word] = words;
    if (!word || word.frames > loneStop.longestWordFrames) return null;
    const { voicedFrames } = utterance.voiceIn(word.startFrame, word.frames);
    if (voicedFrames < loneStop.leastVoicedFrames) return null;
    if (voicedFrames < loneStop.leastShare * utterance.voicedFrames) return null;
    const bar = loneStop.bar - loweredInNoise(utterance.removedDb, false, inNoise);
    const room = bar - (loopScore - score) / Math.max(1, frames) - ownCost * word.costPerFrame;
    return room < 0 ? null : { words: this.#word, score: Math.min(1, 0.5 + room / (2 * spread)) };
  }
}
