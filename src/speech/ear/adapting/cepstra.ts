/** Band energies of a stretch of sound, as logarithms: `bands` a frame, one frame after another. */
export type Bands = { readonly frames: number; readonly bands: number; readonly values: Float32Array };

/** What the acoustic model hears of a frame: the cepstra, their slope, and the slope of that; `width` figures each. */
export type Features = { readonly frames: number; readonly width: number; readonly values: Float32Array };

const STREAMS = 3;

/**
 * The engine's features from its own band energies: cosine transform, lifter, mean over the utterance taken off, and the
 * differences over time it calls 1s_c_d_dd. It must be what the engine itself computes, which a test compares.
 *
 * Cosine transform and lifter: Davis and Mermelstein (1980) and Juang, Rabiner and Wilpon (1987), both IEEE Trans. ASSP.
 */
export function featuresOf({ frames, bands, values }: Bands, width: number, lifter: number): Features {
  const cepstra = new Float64Array(frames * width);
  for (let n = 0; n < width; n += 1) {
    const lift = lifter > 0 ? 1 + (lifter / 2) * Math.sin((Math.PI * n) / lifter) : 1;
    const scale = lift * Math.sqrt((n === 0 ? 1 : 2) / bands);
    for (let band = 0; band < bands; band += 1) {
      const factor = scale * Math.cos((Math.PI * n * (band + 0.5)) / bands);
      for (let frame = 0; frame < frames; frame += 1)
        add(cepstra, frame * width + n, factor * (values[frame * bands + band] ?? 0));
    }
  }
  withoutMean(cepstra, frames, width);
  return { frames, width, values: withSlopes(cepstra, frames, width) };
}

/** Frames with no energy at all are no part of the mean: that is the engine's rule too. */
function withoutMean(cepstra: Float64Array, frames: number, width: number): void {
  const mean = new Float64Array(width);
  let counted = 0;
  for (let frame = 0; frame < frames; frame += 1) {
    if ((cepstra[frame * width] ?? 0) < 0) continue;
    counted += 1;
    for (let n = 0; n < width; n += 1) add(mean, n, cepstra[frame * width + n] ?? 0);
  }
  for (let at = 0; at < cepstra.length; at += 1) add(cepstra, at, -(mean[at % width] ?? 0) / Math.max(1, counted));
}

function withSlopes(cepstra: Float64Array, frames: number, width: number): Float32Array {
  const all = new Float32Array(frames * width * STREAMS);
  const at = (frame: number, n: number): number => cepstra[Math.min(frames - 1, Math.max(0, frame)) * width + n] ?? 0;
  for (let frame = 0; frame < frames; frame += 1) {
    const row = frame * width * STREAMS;
    for (let n = 0; n < width; n += 1) {
      all[row + n] = at(frame, n);
      all[row + width + n] = at(frame + 2, n) - at(frame - 2, n);
      all[row + 2 * width + n] = at(frame + 3, n) - at(frame - 1, n) - (at(frame + 1, n) - at(frame - 3, n));
    }
  }
  return all;
}

function add(sums: Float64Array, at: number, value: number): void {
  sums[at] = (sums[at] ?? 0) + value;
}
