/** Half the filter's length in zero crossings, and the Kaiser window's shape: about 80 dB of stop band. */
const ZERO_CROSSINGS = 24;
const KAISER_BETA = 8;
/** The pass band ends a little below the Nyquist frequency of the slower side, so that the transition fits above it. */
const PASS_BAND = 0.94;

/**
 * Changes the sample rate of a stream by a rational factor: a polyphase Kaiser-windowed sinc.
 * Output sample n stands for input time n * from / to exactly, so positions convert without an offset; the price is
 * that a block's last half filter comes out with the next block.
 */
export class Resampler {
  readonly #up: number;
  readonly #down: number;
  readonly #half: number;
  readonly #phases: readonly Float32Array[];
  #held: Float32Array;
  /** Position of the next output in units of 1/up input samples, counted from the first held sample. */
  #next: number;

  constructor(fromHz: number, toHz: number) {
    const common = greatestCommonDivisor(fromHz, toHz);
    this.#up = toHz / common;
    this.#down = fromHz / common;
    const cutoff = Math.min(1, toHz / fromHz) * PASS_BAND;
    this.#half = Math.ceil(ZERO_CROSSINGS / cutoff);
    this.#phases = Array.from({ length: this.#up }, (_, phase) => tapsFor(phase / this.#up, this.#half, cutoff));
    this.#held = new Float32Array(this.#half);
    this.#next = this.#half * this.#up;
  }

  push(input: Float32Array): Float32Array {
    if (this.#up === this.#down) return input.slice();
    const held = new Float32Array(this.#held.length + input.length);
    held.set(this.#held);
    held.set(input, this.#held.length);

    const usable = (held.length - this.#half) * this.#up;
    const count = Math.max(0, Math.ceil((usable - this.#next) / this.#down));
    const output = new Float32Array(count);
    for (let n = 0; n < count; n += 1) output[n] = this.#at(held, this.#next + n * this.#down);
    this.#next += count * this.#down;

    const spent = Math.max(0, Math.floor(this.#next / this.#up) - this.#half);
    this.#held = held.slice(spent);
    this.#next -= spent * this.#up;
    return output;
  }

  #at(held: Float32Array, position: number): number {
    const taps = this.#phases[position % this.#up] ?? new Float32Array(0);
    const first = Math.floor(position / this.#up) - this.#half + 1;
    let sum = 0;
    for (let k = 0; k < taps.length; k += 1) sum += (held[first + k] ?? 0) * (taps[k] ?? 0);
    return sum;
  }
}

/** The filter's taps for an output that lies `fraction` of an input sample after the sample at index half - 1. */
function tapsFor(fraction: number, half: number, cutoff: number): Float32Array {
  const taps = Float32Array.from({ length: 2 * half }, (_, k) => {
    const distance = k - (half - 1) - fraction;
    return cutoff * sinc(cutoff * distance) * kaiser(distance / half);
  });
  const gain = taps.reduce((sum, tap) => sum + tap, 0);
  return taps.map((tap) => tap / gain);
}

const sinc = (x: number): number => (x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x));

const kaiser = (x: number): number =>
  Math.abs(x) > 1 ? 0 : besselI0(KAISER_BETA * Math.sqrt(1 - x * x)) / besselI0(KAISER_BETA);

/** Modified Bessel function of the first kind, order zero, by its power series. */
function besselI0(x: number): number {
  let term = 1;
  let sum = 1;
  for (let k = 1; term > sum * 1e-12; k += 1) {
    term *= (x / 2 / k) ** 2;
    sum += term;
  }
  return sum;
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}
