import type { HeardState } from '../decoder';
import type { Acoustics } from './acoustics';
import type { Features } from './cepstra';

/** A line as it was heard: what it sounded like, and which sound unit lay where. */
export type AlignedLine = { readonly features: Features; readonly states: readonly HeardState[] };

/** How much of some speech fell to each Gaussian of the model, and the sum of what fell there. */
export type Occupancy = {
  readonly counts: Float64Array;
  readonly sums: Float64Array;
  readonly frames: number;
  /** How well the speech fitted, in all: natural log of its likelihood. */
  readonly logLikelihood: number;
};

/** Silence and noises are the room's, and not the speaker's. */
export const isSpeech = (phone: string): boolean => !/^(SIL|\+.*)$/i.test(phone);

/** Less than this of a frame is nothing. */
const LEAST_SHARE = 1e-4;

/**
 * Shares each frame out among the Gaussians of its sound unit, by how likely each makes it: the expectation step of
 * Dempster, Laird and Rubin (1977), with the states held fixed.
 */
export function occupancyOf(lines: readonly AlignedLine[], acoustics: Acoustics, means: Float32Array): Occupancy {
  const { phones, streams, densities, width } = acoustics;
  const counts = new Float64Array(means.length / width);
  const sums = new Float64Array(means.length);
  const shares = new Float64Array(densities);
  let frames = 0;
  let logLikelihood = 0;
  for (const { features, states } of lines) {
    for (const { phone, unit, startFrame, frames: length } of states) {
      const codebook = phones.indexOf(phone);
      if (codebook < 0 || !isSpeech(phone)) continue;
      const logWeights = weightsFor(acoustics, unit);
      for (let frame = startFrame; frame < Math.min(features.frames, startFrame + length); frame += 1) {
        frames += 1;
        for (let stream = 0; stream < streams; stream += 1) {
          const first = (codebook * streams + stream) * densities;
          const seen = (frame * streams + stream) * width;
          const weights = logWeights.subarray(stream * densities, (stream + 1) * densities);
          logLikelihood += share(shares, acoustics, means, first, features.values, seen, weights);
          for (let density = 0; density < densities; density += 1) {
            const part = shares[density] ?? 0;
            if (part < LEAST_SHARE) continue;
            counts[first + density] = (counts[first + density] ?? 0) + part;
            const at = (first + density) * width;
            for (let n = 0; n < width; n += 1)
              sums[at + n] = (sums[at + n] ?? 0) + part * (features.values[seen + n] ?? 0);
          }
        }
      }
    }
  }
  return { counts, sums, frames, logLikelihood };
}

function weightsFor({ streams, densities, logWeight }: Acoustics, unit: number): Float64Array {
  return Float64Array.from({ length: streams * densities }, (_, n) =>
    logWeight(Math.floor(n / densities), n % densities, unit),
  );
}

/** Fills in each Gaussian's share of one frame of one stream, and answers the log likelihood of that frame. */
function share(
  shares: Float64Array,
  { variances, densities, width }: Acoustics,
  means: Float32Array,
  first: number,
  seen: Float32Array,
  from: number,
  logWeights: Float64Array,
): number {
  let best = Number.NEGATIVE_INFINITY;
  for (let density = 0; density < densities; density += 1) {
    const at = (first + density) * width;
    let log = logWeights[density] ?? 0;
    for (let n = 0; n < width; n += 1) {
      const variance = variances[at + n] ?? 1;
      const off = (seen[from + n] ?? 0) - (means[at + n] ?? 0);
      log -= 0.5 * ((off * off) / variance + Math.log(variance));
    }
    shares[density] = log;
    best = Math.max(best, log);
  }
  let sum = 0;
  for (let density = 0; density < densities; density += 1) {
    const part = Math.exp((shares[density] ?? 0) - best);
    shares[density] = part;
    sum += part;
  }
  for (let density = 0; density < densities; density += 1) shares[density] = (shares[density] ?? 0) / sum;
  return best + Math.log(sum);
}
