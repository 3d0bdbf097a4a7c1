import { CEPSTRA, type MeanTransform } from '../../../core/voice-profile/voice-profile';
import type { Acoustics } from './acoustics';
import { isSpeech, type Occupancy } from './occupancy';
import { solved } from './solved';

/**
 * So many frames of speech the model's own means are worth. With a few lines read aloud it keeps the transform near to
 * leaving things alone wherever the lines say little.
 */
const PRIOR_FRAMES = 33;
/** Keeps a figure that no frame bears on where it is. */
const TINY = 1e-6;

/**
 * The one linear transform of all means that makes some speech likeliest: maximum likelihood linear regression (Leggetter
 * and Woodland, Computer Speech and Language 9, 1995), drawn towards no change at all by a prior (Chesta, Siohan and Lee,
 * Eurospeech 1999).
 *
 * The second and third stream are differences over time of the first, so that one matrix serves all three, and only the
 * first is shifted. That asks for 182 figures of a few lines instead of 546.
 */
export function meanTransform(occupancy: Occupancy, acoustics: Acoustics, prior = PRIOR_FRAMES): MeanTransform {
  const rows = Array.from({ length: CEPSTRA }, (_, row) => transformRow(row, occupancy, acoustics, prior));
  return {
    turn: rows.map((figures, row) => figures.slice(0, CEPSTRA).map((value, n) => value + (n === row ? 1 : 0))),
    shift: rows.map((figures) => figures[CEPSTRA] ?? 0),
  };
}

/** One row, less what would leave the means alone: each row is a weighted least-squares problem of its own. */
function transformRow(
  row: number,
  { counts, sums }: Occupancy,
  acoustics: Acoustics,
  prior: number,
): readonly number[] {
  const { phones, streams, densities, means, variances } = acoustics;
  const size = CEPSTRA + 1;
  const left = Array.from({ length: size }, () => new Float64Array(size));
  const right = new Float64Array(size);
  const mean = new Float64Array(size);
  let count = 0;
  for (const [gaussian, occupied] of counts.entries()) {
    const stream = Math.floor(gaussian / densities) % streams;
    const phone = phones[Math.floor(gaussian / (densities * streams))] ?? '';
    if (occupied <= TINY || !isSpeech(phone)) continue;
    const at = gaussian * CEPSTRA;
    for (let n = 0; n < CEPSTRA; n += 1) mean[n] = means[at + n] ?? 0;
    mean[CEPSTRA] = stream === 0 ? 1 : 0;
    const precision = 1 / (variances[at + row] ?? 1);
    const off = precision * ((sums[at + row] ?? 0) - occupied * (mean[row] ?? 0));
    const weight = occupied * precision;
    count += occupied;
    for (let i = 0; i < size; i += 1) {
      const line = left[i];
      if (!line) continue;
      right[i] = (right[i] ?? 0) + off * (mean[i] ?? 0);
      for (let j = 0; j < size; j += 1) line[j] = (line[j] ?? 0) + weight * (mean[i] ?? 0) * (mean[j] ?? 0);
    }
  }
  // A frame counts once in each stream.
  const drawn = 1 + (prior * streams) / Math.max(1, count);
  for (const [i, line] of left.entries()) line[i] = (line[i] ?? 0) * drawn + TINY;
  return solved(left, right);
}

/** The model's means as this voice would have made them. Silence and noises stay as they are. */
export function transformed(
  { turn, shift }: MeanTransform,
  { phones, streams, densities, width, means }: Pick<Acoustics, 'phones' | 'streams' | 'densities' | 'width' | 'means'>,
): Float32Array {
  return means.map((value, at) => {
    const gaussian = Math.floor(at / width);
    if (!isSpeech(phones[Math.floor(gaussian / (densities * streams))] ?? '')) return value;
    const row = at % width;
    const start = gaussian * width;
    const isFirst = Math.floor(gaussian / densities) % streams === 0;
    return (turn[row] ?? []).reduce(
      (sum, factor, n) => sum + factor * (means[start + n] ?? 0),
      isFirst ? (shift[row] ?? 0) : 0,
    );
  });
}
