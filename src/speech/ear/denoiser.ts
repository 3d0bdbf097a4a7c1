import createModule from '@jitsi/rnnoise-wasm/dist/rnnoise.js';

/** RNNoise works on ten milliseconds at 48 kHz and nothing else. */
export const DENOISER_HZ = 48_000;
export const DENOISER_FRAME = 480;
/** RNNoise reads samples on the scale of 16-bit integers. */
const FULL_SCALE = 32_768;

/**
 * RNNoise on one stream. Besides the cleaned frame it gives the probability that the frame holds a voice, which is
 * the endpointer's main evidence, so the denoiser runs even where its sound is not used.
 */
export class Denoiser {
  readonly #module: DenoiserModule;
  readonly #buffer: number;
  #state: number;

  private constructor(module: DenoiserModule) {
    this.#module = module;
    this.#buffer = module._malloc(DENOISER_FRAME * Float32Array.BYTES_PER_ELEMENT);
    this.#state = module._rnnoise_create();
  }

  /** `wasm` holds the bytes of the package's rnnoise.wasm: the host knows where it lives, the package does not. */
  static async create(wasm: ArrayBuffer): Promise<Denoiser> {
    return new Denoiser(await createModule({ wasmBinary: wasm }));
  }

  /** Cleans one frame. The sound that comes out is ten milliseconds older than the frame that went in. */
  process(frame: Float32Array): { readonly clean: Float32Array; readonly voice: number } {
    const at = this.#buffer / Float32Array.BYTES_PER_ELEMENT;
    this.#module.HEAPF32.set(
      frame.map((sample) => sample * FULL_SCALE),
      at,
    );
    const voice = this.#module._rnnoise_process_frame(this.#state, this.#buffer, this.#buffer);
    const clean = this.#module.HEAPF32.slice(at, at + DENOISER_FRAME).map((sample) => sample / FULL_SCALE);
    return { clean, voice };
  }

  /** Forgets the noise it has learned: for a new microphone, and for tests that must not depend on each other. */
  reset(): void {
    this.#module._rnnoise_destroy(this.#state);
    this.#state = this.#module._rnnoise_create();
  }
}

type DenoiserModule = Awaited<ReturnType<typeof createModule>>;
