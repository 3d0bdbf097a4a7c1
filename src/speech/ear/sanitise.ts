/**
 * A copy of captured samples in which nothing can hurt the decoder: a single NaN or infinity would poison its running
 * mean for every later utterance, and a value beyond full scale wraps when the engine turns it into 16 bits.
 */
export function sanitise(samples: Float32Array): Float32Array {
  return samples.map((sample) => (Number.isFinite(sample) ? Math.max(-1, Math.min(1, sample)) : 0));
}
