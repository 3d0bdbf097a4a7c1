/** Samples in, fixed-size blocks out: the glue between stages that disagree about block length. */
export class SampleQueue {
  #held = new Float32Array(0);

  push(samples: Float32Array): void {
    const joined = new Float32Array(this.#held.length + samples.length);
    joined.set(this.#held);
    joined.set(samples, this.#held.length);
    this.#held = joined;
  }

  get length(): number {
    return this.#held.length;
  }

  /** The oldest `size` samples, or null while fewer are held. */
  take(size: number): Float32Array | null {
    if (this.#held.length < size) return null;
    const block = this.#held.slice(0, size);
    this.#held = this.#held.subarray(size);
    return block;
  }
}
