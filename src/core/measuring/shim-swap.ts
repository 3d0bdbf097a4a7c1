import type { Millimetres, Window } from '../fastening/quantity';
import { sideOf } from '../fastening/steady';
import { gapWith, type ValveGap } from './shim';

/** Which removed shim goes to which valve: index of the shim by index of the valve; undefined where one must be bought. */
export type ShimSwaps = readonly (number | undefined)[];

/**
 * Shares out the shims that came out among the valves, so that as many valves as possible get a gap within the window
 * (in mm, both ends included) without buying. The most valves that can be served are served: valves already given one
 * are moved on while that frees a fitting shim.
 */
export function swapShims(valves: readonly ValveGap[], removed: readonly Millimetres[], window: Window): ShimSwaps {
  const fits = (valve: number, shim: number): boolean => {
    const [v, s] = [valves[valve], removed[shim]];
    if (v === undefined || s === undefined) return false;
    return sideOf(gapWith(v, s), window) === 'within';
  };
  const valveOf = new Map<number, number>();
  const place = (valve: number, tried: Set<number>): boolean => {
    for (let shim = 0; shim < removed.length; shim++) {
      if (tried.has(shim) || !fits(valve, shim)) continue;
      tried.add(shim);
      const holder = valveOf.get(shim);
      if (holder !== undefined && !place(holder, tried)) continue;
      valveOf.set(shim, valve);
      return true;
    }
    return false;
  };
  for (let valve = 0; valve < valves.length; valve++) place(valve, new Set());
  const shimOf = new Map([...valveOf].map(([shim, valve]) => [valve, shim]));
  return valves.map((_, valve) => shimOf.get(valve));
}
