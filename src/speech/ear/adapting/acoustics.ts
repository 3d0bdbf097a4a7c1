import { fail, ok, type Result } from '../../../core/result';
import { readGaussians } from './means-file';

/** The acoustic model as figures: what sounds like what. Written for models with one codebook a phone, as both here are. */
export type Acoustics = {
  /** In the order of the codebooks. */
  readonly phones: readonly string[];
  readonly streams: number;
  readonly densities: number;
  readonly width: number;
  readonly means: Float32Array;
  readonly variances: Float32Array;
  readonly checksum: number;
  /** The natural log of how much a density counts in a sound unit. */
  readonly logWeight: (stream: number, density: number, unit: number) => number;
};

/** One of the model's files, by its name. */
export type ModelFile = (name: string) => Promise<Uint8Array>;

/** Below this the trainer itself would not have gone; a variance of nothing would be certain of everything. */
const LEAST_VARIANCE = 1e-4;
/** A weight is stored in one byte, as a power of the engine's base shifted by ten bits. */
const LOG_OF_STEP = 1024 * Math.log(1.0001);

/** Reads what adapting needs. The reason of a failure names the file. */
export async function readAcoustics(file: ModelFile): Promise<Result<Acoustics, string>> {
  const [means, variances, weights, definition] = await Promise.all(
    ['means', 'variances', 'sendump', 'mdef'].map(file),
  );
  if (!means || !variances || !weights || !definition) return fail('files are missing');
  const read = readGaussians(means);
  const spread = readGaussians(variances);
  if (!read.ok) return fail(`means: ${read.error}`);
  if (!spread.ok) return fail(`variances: ${spread.error}`);
  const { codebooks, streams, densities, width, values, checksum } = read.value;
  if (spread.value.values.length !== values.length) return fail('variances: not as many as means');
  const phones = phonesOf(definition);
  if (phones.length !== codebooks) return fail(`mdef: ${phones.length} phones for ${codebooks} codebooks`);
  const table = weightsOf(weights, streams, densities);
  if (!table.ok) return fail(`sendump: ${table.error}`);
  const { units, offset } = table.value;
  return ok({
    phones,
    streams,
    densities,
    width,
    means: values,
    variances: spread.value.values.map((value) => Math.max(LEAST_VARIANCE, value)),
    checksum,
    logWeight: (stream, density, unit) =>
      -LOG_OF_STEP * (weights[offset + (stream * densities + density) * units + unit] ?? 255),
  });
}

/** The names of the plain phones, which the binary model definition has after its own description. */
export function phonesOf(bytes: Uint8Array): readonly string[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const sizes = 12 + view.getUint32(8, true);
  const count = view.getInt32(sizes, true);
  const [TABLE, MOST] = [40, 8192];
  const names = String.fromCharCode(...bytes.subarray(sizes + TABLE, sizes + TABLE + Math.min(MOST, 32 * count)));
  return names.split('\0').slice(0, count);
}

/** Lines of text with their lengths before them, an empty one last, then two sizes, then a byte for each weight. */
function weightsOf(
  bytes: Uint8Array,
  streams: number,
  densities: number,
): Result<{ readonly units: number; readonly offset: number }, string> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = 0;
  for (let length = view.getUint32(at, true); length > 0; length = view.getUint32(at, true)) {
    at += 4 + length;
    if (at + 12 > bytes.length) return fail('its description has no end');
  }
  const units = view.getUint32(at + 8, true);
  const offset = at + 12;
  const isClustered = view.getUint32(at + 4, true) !== densities;
  return isClustered || bytes.length !== offset + streams * densities * units
    ? fail('weights in a form that is not read here')
    : ok({ units, offset });
}
