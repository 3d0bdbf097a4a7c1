import { fail, ok, type Result } from '../../core/result';
import type { Bands } from './adapting/cepstra';
import { type Engine, type EngineDecoder, type EngineSegment, type EngineSettings, openEngine } from './engine';
import { type AdaptedMeans, useMeans } from './engine-means';
import { fillerWord, isFiller, loopWords } from './filler';
import { type SearchGraph, setSearchGraph } from './fsg';
import type { EarModel, Lexicon } from './messages';

/** One word of a result. Cost is how badly it fits: 0 is perfect, about 20 a good word, about 60 stray speech. */
export type HeardWord = {
  readonly word: string;
  readonly startFrame: number;
  readonly frames: number;
  readonly costPerFrame: number;
};

/** What the decoder made of an utterance; no words means that no complete phrase fitted. */
export type Hypothesis = {
  readonly words: readonly HeardWord[];
  /** The whole path's log likelihood in the engine's own unit, comparable only between decodes of the same sound. */
  readonly score: number;
};

/** One state of one phone, by the model's own number for its sound unit. */
export type HeardState = {
  readonly phone: string;
  readonly unit: number;
  readonly startFrame: number;
  readonly frames: number;
};

export type DecoderFault =
  | { readonly code: 'model-missing'; readonly detail: string }
  | { readonly code: 'model-broken'; readonly detail: string };

/** The engine writes likelihoods as powers of this. */
const LOG_BASE = 1.0001;
/** Words are reported to three decimals, so this is the smallest likelihood that can be told from zero. */
const LEAST_LIKELIHOOD = 0.0005;
const FRAMES_PER_SECOND = 100;

/**
 * The recogniser engine with its traps closed. One is made and kept for life, because the engine leaks about twelve
 * megabytes for each that is thrown away.
 */
export class Decoder {
  readonly #engine: Engine;
  readonly #decoder: EngineDecoder;
  readonly #scoreAt: number;
  readonly #phones: readonly string[];
  readonly #loopWords: readonly string[];
  /** The engine gives each word's phones in memory that it never takes back, so no word is looked up twice. */
  readonly #looked = new Map<string, string | null>();

  private constructor(engine: Engine, decoder: EngineDecoder, phones: readonly string[]) {
    this.#engine = engine;
    this.#decoder = decoder;
    this.#phones = phones;
    decoder.add_words(...phones.map((phone) => [fillerWord(phone), phone] as const));
    this.#loopWords = loopWords(phones, (word) => this.knows(word));
    this.#scoreAt = engine._malloc(4);
  }

  /**
   * `modelBase` holds the model's folder. `settings` are the engine's own; `features` replace what the model's
   * feat_params.json would set over them. `adapted` takes the place of its means.
   */
  static async load(
    modelBase: string,
    { folder, phones }: EarModel,
    settings: EngineSettings,
    features: EngineSettings,
    adapted: AdaptedMeans | null = null,
  ): Promise<Result<Decoder, DecoderFault>> {
    try {
      const engine = await openEngine(modelBase);
      const decoder = new engine.Decoder({ ...settings, hmm: modelBase + folder });
      const original = decoder.init_featparams.bind(decoder);
      decoder.init_featparams = async () => {
        await original();
        for (const [key, value] of Object.entries(features))
          decoder.set_config(key, typeof value === 'string' ? value : Number(value));
      };
      // The model has no feature transform. Asking for one relies on the host answering 404, which many hosts do not.
      decoder.init_feat = async () => engine._decoder_init_feat_s3file(decoder.cdecoder, 0);
      if (adapted) useMeans(engine, decoder, adapted);
      await decoder.initialize();
      return ok(new Decoder(engine, decoder, phones));
    } catch (error) {
      const detail = String(error);
      return fail({ code: /fetch|ENOENT|Not Found/i.test(detail) ? 'model-missing' : 'model-broken', detail });
    }
  }

  /**
   * Adds the pronunciations that the model's dictionary lacks, and returns the entries it had to leave out
   * because they name a phone that the model does not have.
   */
  addWords(lexicon: Lexicon): readonly string[] {
    const refused: string[] = [];
    const added: [string, string][] = [];
    for (const [word, pronunciations] of lexicon) {
      const known = this.#pronunciationsOf(word);
      for (const pronunciation of pronunciations) {
        if (!pronunciation.split(' ').every((phone) => this.#phones.includes(phone)))
          refused.push(`${word}: ${pronunciation}`);
        else if (!known.includes(pronunciation)) {
          known.push(pronunciation);
          added.push([known.length === 1 ? word : `${word}(${known.length})`, pronunciation]);
        }
      }
    }
    if (added.length > 0) this.#decoder.add_words(...added);
    this.#looked.clear();
    return refused;
  }

  knows(word: string): boolean {
    return this.#lookUp(word) !== null;
  }

  /** How many phones a word's first pronunciation has. */
  phonesIn(word: string): number {
    return this.#lookUp(word)?.split(' ').length ?? 0;
  }

  /** Only between utterances: the engine goes silently deaf if the graph changes under one. On failure the old one stays. */
  search(graph: SearchGraph): Result<void, string> {
    return setSearchGraph(this.#engine, this.#decoder, graph, this.#loopWords, (word) => this.knows(word));
  }

  begin(): void {
    this.#decoder.start();
  }

  feed(samples: Float32Array): void {
    this.#decoder.process_audio(samples, false, false);
  }

  /** The best path so far; it may still be taken back. */
  partial(): string {
    return stripped(this.#decoder.get_text());
  }

  end(): Hypothesis {
    this.#decoder.stop();
    return this.#hypothesis();
  }

  /**
   * Decodes a whole buffered utterance at once, with the cepstral mean taken over all of it. Streaming leaves something
   * behind in the engine's front end that spoils this, so that is made anew first.
   */
  decodeWhole(samples: Float32Array): Hypothesis {
    this.#freshFrontEnd();
    this.#decoder.start();
    this.#decoder.process_audio(samples, false, true);
    this.#decoder.stop();
    return this.#hypothesis();
  }

  /** Which sound unit lay where in what was decoded last; needs a whole utterance. */
  states(): readonly HeardState[] {
    const words = this.#decoder.get_alignment({ align_level: 2 }).w ?? [];
    return words.flatMap(({ w = [] }) =>
      w.flatMap((phone) => (phone.w ?? []).map((state) => heardState(phone.t, state))),
    );
  }

  /** The front end's band energies, as logarithms. */
  bands(samples: Float32Array): Bands {
    this.#freshFrontEnd();
    const { data, nfr, nfeat } = this.#decoder.spectrogram(samples);
    return { frames: nfr, bands: nfeat, values: data };
  }

  /** How strongly the front end lifts the higher cepstra. */
  get lifter(): number {
    return this.#decoder.get_config('lifter');
  }

  /** Forgets the running cepstral mean: a new microphone, a new person, or a test that must stand alone. */
  async reset(): Promise<void> {
    await this.#decoder.reinitialize_audio();
  }

  /** What the engine's `reinitialize_audio` does, without waiting: nothing in it is slow with the files already here. */
  #freshFrontEnd(): void {
    const { cdecoder, cacmod } = this.#decoder;
    const front = this.#engine._decoder_init_fe(cdecoder);
    const features = this.#engine._decoder_init_feat_s3file(cdecoder, 0);
    if (this.#engine._acmod_reinit_feat(cacmod, front, features) < 0) throw new Error('the engine lost its front end');
  }

  #hypothesis(): Hypothesis {
    const found = this.#engine._decoder_hyp(this.#decoder.cdecoder, this.#scoreAt);
    if (found === 0 || this.#decoder.get_text() === '') return { words: [], score: Number.NEGATIVE_INFINITY };
    const score = this.#engine.HEAP32[this.#scoreAt / 4] ?? 0;
    const segments = this.#decoder.get_alignment().w ?? [];
    return { words: segments.filter(({ t }) => isWord(t)).map(heardWord), score };
  }

  #lookUp(word: string): string | null {
    const known = this.#looked.get(word);
    if (known !== undefined) return known;
    const found = this.#decoder.lookup_word(word);
    this.#looked.set(word, found);
    return found;
  }

  #pronunciationsOf(word: string): string[] {
    const known: string[] = [];
    for (let n = 1; ; n += 1) {
      const pronunciation = this.#decoder.lookup_word(n === 1 ? word : `${word}(${n})`);
      if (pronunciation === null) return known;
      known.push(pronunciation);
    }
  }
}

/** Silences and noises come in brackets of several kinds. */
const isWord = (text: string): boolean => !/^[<[(+]/.test(text);

/** Second and later pronunciations are written "word(2)". */
const stripped = (text: string): string => text.replaceAll(/\(\d+\)/g, '');

const heardState = (phone: string, { t, b, d }: EngineSegment): HeardState => ({
  phone,
  unit: Number(t),
  startFrame: Math.round(b * FRAMES_PER_SECOND),
  frames: Math.round(d * FRAMES_PER_SECOND),
});

function heardWord({ t, b, d, p }: EngineSegment): HeardWord {
  const frames = Math.max(1, Math.round(d * FRAMES_PER_SECOND));
  const cost = -Math.log(Math.max(p, LEAST_LIKELIHOOD)) / Math.log(LOG_BASE);
  return {
    word: stripped(t),
    startFrame: Math.round(b * FRAMES_PER_SECOND),
    frames,
    costPerFrame: cost / frames,
  };
}

/** The words of a result as one string; null where it is the filler's. */
export function commandWords(hypothesis: Hypothesis): string | null {
  return hypothesis.words.some(({ word }) => isFiller(word))
    ? null
    : hypothesis.words.map(({ word }) => word).join(' ');
}
