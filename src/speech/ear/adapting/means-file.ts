import { fail, ok, type Result } from '../../../core/result';

/** A file of means or variances, as the engine's trainer writes it: a header of text, a few sizes, the figures, a checksum. */
export type GaussianFile = {
  readonly codebooks: number;
  readonly streams: number;
  readonly densities: number;
  /** Figures in each Gaussian of a stream. */
  readonly width: number;
  /** By codebook, stream, density and figure. */
  readonly values: Float32Array;
  /** Where in the file the figures begin. */
  readonly offset: number;
  /** What the file says of itself; it also tells one model from another. */
  readonly checksum: number;
};

const END_OF_HEADER = 'endhdr\n';
/** Written in the byte order of the machine that made the file; the shipped ones are little-endian. */
const BYTE_ORDER = 0x11223344;

export function readGaussians(bytes: Uint8Array): Result<GaussianFile, string> {
  const header = String.fromCharCode(...bytes.subarray(0, 512));
  const end = header.indexOf(END_OF_HEADER);
  if (!header.startsWith('s3\n') || end < 0) return fail('no header of an acoustic model');
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let at = end + END_OF_HEADER.length;
  const next = (): number => {
    at += 4;
    return view.getUint32(at - 4, true);
  };
  if (next() !== BYTE_ORDER) return fail('another byte order');
  const [codebooks, streams, densities] = [next(), next(), next()];
  const widths = Array.from({ length: streams }, next);
  const [width = 0] = widths;
  const total = next();
  if (widths.some((other) => other !== width)) return fail('streams of unlike widths');
  if (total !== codebooks * streams * densities * width || bytes.length !== at + 4 * total + 4)
    return fail(`${total} figures in ${bytes.length} bytes`);
  const offset = at;
  const values = Float32Array.from({ length: total }, (_, n) => view.getFloat32(offset + 4 * n, true));
  return ok({
    codebooks,
    streams,
    densities,
    width,
    values,
    offset,
    checksum: view.getUint32(offset + 4 * total, true),
  });
}

/** The same file with other figures, and a checksum that agrees with them: the engine looks. */
export function withFigures(bytes: Uint8Array, file: GaussianFile, values: Float32Array): Uint8Array {
  const copy = Uint8Array.from(bytes);
  const view = new DataView(copy.buffer);
  for (const [n, value] of values.entries()) view.setFloat32(file.offset + 4 * n, value, true);
  view.setUint32(copy.length - 4, checksumOf(view, file), true);
  return copy;
}

/** Counts the sizes and the figures, but neither the header nor the mark of the byte order. */
function checksumOf(view: DataView, { streams, offset }: GaussianFile): number {
  let sum = 0;
  for (let at = offset - 4 * (streams + 4); at < view.byteLength - 4; at += 4)
    sum = ((((sum << 20) | (sum >>> 12)) >>> 0) + view.getUint32(at, true)) >>> 0;
  return sum;
}
