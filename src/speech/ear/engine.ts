import createModule from 'soundswallower';

/**
 * The recogniser's module as it really is. Its own declarations miss what the compiled code offers and we need:
 * the path score, and initialisation steps that must be replaced.
 */
export type Engine = {
  readonly HEAP32: Int32Array;
  readonly HEAPU8: Uint8Array;
  readonly _malloc: (bytes: number) => number;
  readonly _free: (at: number) => void;
  /** The address of the words, or 0; writes the path's score to the second address. */
  readonly _decoder_hyp: (decoder: number, scoreAt: number) => number;
  readonly _decoder_logmath: (decoder: number) => number;
  readonly _decoder_set_fsg: (decoder: number, fsg: number) => number;
  readonly _fsg_model_init: (name: number, logmath: number, languageWeight: number, states: number) => number;
  readonly _fsg_model_word_add: (fsg: number, word: number) => number;
  readonly _fsg_model_trans_add: (fsg: number, from: number, to: number, logProbability: number, word: number) => void;
  readonly _fsg_model_null_trans_add: (fsg: number, from: number, to: number, logProbability: number) => number;
  readonly _fsg_set_states: (fsg: number, start: number, final: number) => void;
  readonly _decoder_init_fe: (decoder: number) => number;
  readonly _acmod_reinit_feat: (acousticModel: number, frontEnd: number, features: number) => number;
  readonly _decoder_init_feat_s3file: (decoder: number, file: number) => number;
  readonly _s3file_init: (bytes: number, length: number) => number;
  /** Means, variances, mixture weights in full or 0, and as one byte each. */
  readonly _load_gmm: (decoder: number, means: number, variances: number, full: number, weights: number) => number;
  readonly Decoder: new (settings: EngineSettings) => EngineDecoder;
};

export type EngineSettings = Readonly<Record<string, string | number | boolean>>;

export type EngineDecoder = {
  readonly cdecoder: number;
  readonly cacmod: number;
  init_featparams: () => Promise<unknown>;
  init_feat: () => Promise<number>;
  load_gmm: () => Promise<void>;
  readonly get_config: (key: string) => number;
  readonly set_config: (key: string, value: string | number) => boolean;
  readonly initialize: () => Promise<void>;
  readonly reinitialize_audio: () => Promise<void>;
  readonly start: () => void;
  readonly stop: () => void;
  readonly process_audio: (samples: Float32Array, noSearch: boolean, wholeUtterance: boolean) => number;
  readonly get_text: () => string;
  /** Level 0 has words, level 2 also their phones and those's states. */
  readonly get_alignment: (options?: { readonly align_level: 0 | 2 }) => { readonly w?: readonly EngineSegment[] };
  /** The logarithm of the energy in each band of the front end's filters, frame after frame. */
  readonly spectrogram: (samples: Float32Array) => {
    readonly data: Float32Array;
    readonly nfr: number;
    readonly nfeat: number;
  };
  readonly lookup_word: (word: string) => string | null;
  readonly add_words: (...words: readonly (readonly [string, string])[]) => void;
};

/**
 * Text, beginning and duration in seconds, 1.0001 to the power of the word's score, to three decimals, and what it is made
 * of. The text of a state is the number of its sound unit.
 */
export type EngineSegment = {
  readonly t: string;
  readonly b: number;
  readonly d: number;
  readonly p: number;
  readonly w?: readonly EngineSegment[];
};

/** `modelBase` is the folder that holds the model folders, with a trailing slash. */
export async function openEngine(modelBase: string): Promise<Engine> {
  // The package's types describe an older interface; `Engine` names what the pinned version has.
  return (await createModule({ modelBase } as object)) as unknown as Engine;
}
