const LEAD = 10_000;
const TAIL = 16_000;
/** A quiet room: real microphones never give digital silence. */
const ROOM = 5e-4;

/** Repeatable numbers from 0 to 1: Park and Miller's minimal standard generator. */
export function seeded(seed: number): () => number {
  let state = (seed % 2_147_483_646) + 1;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

/**
 * A recording with room before and after it, and noise under it at so many decibels below it, by the RMS of the whole
 * recording. Null leaves the noise out.
 */
export function inNoise(
  clip: Float32Array,
  noise: Float32Array,
  snrDb: number | null,
  random: () => number,
): Float32Array {
  const length = LEAD + clip.length + TAIL;
  const from = Math.floor(random() * Math.max(1, noise.length - length));
  const under = noise.subarray(from, from + length);
  const gain = snrDb === null ? 0 : rms(clip) / Math.max(1e-6, rms(under)) / 10 ** (snrDb / 20);
  return Float32Array.from({ length }, (_, n) => {
    const speech = clip[n - LEAD] ?? 0;
    return speech + gain * (under[n] ?? 0) + ROOM * (2 * random() - 1);
  });
}

function rms(samples: Float32Array): number {
  return Math.sqrt(samples.reduce((sum, x) => sum + x * x, 0) / Math.max(1, samples.length));
}
