import type { chance } from './chance';

const HUM_HZ = [50, 100, 150, 300] as const;

/** Chance of a knock of metal in any second of noise, one in so many. */
const KNOCK_EVERY = 6;

/**
 * What a bay sounds like while nobody speaks, -62 to -32 dB below full scale: a rumble (white noise through a one-pole low
 * pass), the hum of mains and compressor, and now and then a knock. Made, not recorded, so that a shift runs anywhere.
 */
export function bayNoise(
  seconds: number,
  rateHz: number,
  { below }: ReturnType<typeof chance>,
): Float32Array<ArrayBuffer> {
  const level = 10 ** (-(32 + below(31)) / 20);
  const hums = HUM_HZ.filter(() => below(2) === 0);
  let rumble = 0;
  const samples = Float32Array.from({ length: Math.round(seconds * rateHz) }, (_, i) => {
    rumble += 0.05 * (below(2_000_001) / 1_000_000 - 1 - rumble);
    const hum = hums.reduce((sum, hz) => sum + Math.sin((2 * Math.PI * hz * i) / rateHz), 0);
    return level * (6 * rumble + 0.3 * hum);
  });
  for (let second = 0; second < seconds; second += 1)
    if (below(KNOCK_EVERY) === 0)
      knock(samples, second * rateHz + below(rateHz), rateHz, 0.05 + below(40) / 100, below);
  return samples;
}

/** A tool laid down: a ringing tone that has died away after a tenth of a second. */
function knock(
  into: Float32Array,
  from: number,
  rateHz: number,
  peak: number,
  below: ReturnType<typeof chance>['below'],
): void {
  const hz = 700 + below(2500);
  const end = Math.min(into.length, from + Math.round(0.25 * rateHz));
  for (let i = Math.max(0, from); i < end; i += 1) {
    const t = (i - from) / rateHz;
    into[i] = (into[i] ?? 0) + peak * Math.exp(-t / 0.03) * Math.sin(2 * Math.PI * hz * t);
  }
}
