import { type NotPositive, notPositive } from '../fastening/positive';
import { type Litres, litres, type Percent, percent } from '../fastening/quantity';
import { steady } from '../fastening/steady';
import type { Working } from '../fastening/working';
import { fail, ok, type Result } from '../result';

export type MixError =
  | NotPositive
  | { readonly code: 'share-out-of-range'; readonly name: 'present' | 'wanted' | 'concentrate'; readonly given: number }
  /** Filling up can only strengthen: the mixture is already as strong as wanted, or stronger. */
  | { readonly code: 'already-there'; readonly present: Percent; readonly wanted: Percent }
  /** No concentrate is strong enough to bring the mixture there. */
  | { readonly code: 'concentrate-too-weak'; readonly concentrate: Percent; readonly wanted: Percent }
  | { readonly code: 'drained-more-than-held'; readonly drained: Litres; readonly capacity: Litres }
  /** Even undiluted concentrate in the room there is would not be enough: this much has to come out in all. */
  | { readonly code: 'drain-more'; readonly drained: Litres; readonly needed: Litres };

/** Percentages by volume: what is in there, what is wanted, and what comes out of the bottle (100 undiluted). */
export type MixShares = { readonly present: Percent; readonly wanted: Percent; readonly concentrate: Percent };

export type TopUp = { readonly concentrate: Litres; readonly water: Litres; readonly working: Working };

/** Concentrate and water, in litres, for filling an empty system: 50 % of 8.5 L is 4.25 L of each. Errors as below. */
export function freshFill(capacity: Litres, wanted: Percent, concentrate: Percent): Result<TopUp, MixError> {
  return topUp(capacity, capacity, { present: percent(0), wanted, concentrate });
}

/**
 * How much to drain, and replace with concentrate alone, in litres: x = V (wanted - present)/(concentrate - present).
 * Errors: `not-positive`, `share-out-of-range`, `already-there`, `concentrate-too-weak`.
 * Source: volume balance; the small shrinkage of mixing is left out.
 */
export function drainAndRefill(
  capacity: Litres,
  shares: MixShares,
): Result<{ readonly volume: Litres; readonly working: Working }, MixError> {
  const bad = notPositive({ V: capacity }) ?? shareError(shares);
  if (bad) return fail(bad);
  const { present, wanted, concentrate } = shares;
  if (wanted <= present) return fail({ code: 'already-there', present, wanted });
  if (wanted > concentrate) return fail({ code: 'concentrate-too-weak', concentrate, wanted });
  const volume = litres((capacity * (wanted - present)) / (concentrate - present));
  return ok({
    volume,
    working: {
      formula: 'drain-and-refill',
      inputs: [
        { name: 'V', value: capacity, unit: 'L' },
        { name: 'present', value: present, unit: '%' },
        { name: 'wanted', value: wanted, unit: '%' },
        { name: 'concentrate', value: concentrate, unit: '%' },
      ],
      result: { name: 'x', value: volume, unit: 'L' },
    },
  });
}

/**
 * Concentrate and water, in litres, to fill a partly drained system to the share wanted. `drained` is the room there is;
 * the rest still holds `present`, which is 0 for water left in the block after a flush.
 * Errors: as `drainAndRefill`, and `drained-more-than-held`, `drain-more`.
 */
export function topUp(capacity: Litres, drained: Litres, shares: MixShares): Result<TopUp, MixError> {
  const bad = notPositive({ V: capacity, drained }) ?? shareError(shares);
  if (bad) return fail(bad);
  if (drained > capacity) return fail({ code: 'drained-more-than-held', drained, capacity });
  const needed = (capacity * shares.wanted - (capacity - drained) * shares.present) / shares.concentrate;
  if (needed < 0) return fail({ code: 'already-there', present: shares.present, wanted: shares.wanted });
  if (steady(needed) > steady(drained)) {
    const least = drainAndRefill(capacity, shares);
    return least.ok ? fail({ code: 'drain-more', drained, needed: least.value.volume }) : least;
  }
  return ok({
    concentrate: litres(needed),
    water: litres(Math.max(0, drained - needed)),
    working: {
      formula: 'concentrate',
      inputs: [
        { name: 'V', value: capacity, unit: 'L' },
        { name: 'room', value: drained, unit: 'L' },
        { name: 'wanted', value: shares.wanted, unit: '%' },
        { name: 'present', value: shares.present, unit: '%' },
        { name: 'strength', value: shares.concentrate, unit: '%' },
      ],
      result: { name: 'c', value: needed, unit: 'L' },
    },
  });
}

function shareError(shares: MixShares): MixError | undefined {
  for (const name of ['present', 'wanted', 'concentrate'] as const) {
    const given = shares[name];
    const least = name === 'concentrate' ? Number.EPSILON : 0;
    if (!(given >= least && given <= 100)) return { code: 'share-out-of-range', name, given };
  }
  return undefined;
}
