/**
 * Runs on the audio thread: gathers the microphone's quanta into blocks of about thirty milliseconds at the device's
 * own rate, and posts them straight to the ear's worker, so that a busy page loses nothing.
 */

/** The audio worklet's global scope, by shape: TypeScript ships no library for it. */
declare class AudioWorkletProcessor {
  readonly port: { onmessage: ((event: { readonly data: unknown }) => void) | null };
}
declare const sampleRate: number;
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

type BlockPort = { readonly postMessage: (block: Float32Array, transfer: readonly ArrayBufferLike[]) => void };

/** A whole number of 128-sample quanta. */
const BLOCK = 128 * Math.max(1, Math.round((sampleRate * 0.03) / 128));

class Capture extends AudioWorkletProcessor {
  #block = new Float32Array(BLOCK);
  #filled = 0;
  #ear: BlockPort | null = null;

  constructor() {
    super();
    this.port.onmessage = ({ data }) => {
      // The page sends one thing only: the port to the worker. A new worker sends a new one.
      this.#ear = data as BlockPort;
    };
  }

  process(inputs: readonly (readonly Float32Array[])[]): boolean {
    const channel = inputs[0]?.[0];
    if (!channel) return true;
    if (this.#filled + channel.length > BLOCK) this.#filled = 0;
    this.#block.set(channel, this.#filled);
    this.#filled += channel.length;
    if (this.#filled === BLOCK) {
      // A transferred buffer is empty afterwards, hence a new one of constant size.
      this.#ear?.postMessage(this.#block, [this.#block.buffer]);
      this.#block = new Float32Array(BLOCK);
      this.#filled = 0;
    }
    return true;
  }
}

registerProcessor('wrenchside-capture', Capture);
