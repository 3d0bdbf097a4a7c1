import { fail, ok, type Result } from '../result';
import { type NotPositive, notPositive } from './positive';
import { type Degrees, degrees, type Millimetres, type Window } from './quantity';
import { steady } from './steady';

/** The turn past snug for bolts whose length is at most so many diameters. */
export type TurnBand = {
  readonly upToDiameters: number;
  readonly turn: Degrees;
  readonly tolerance: Degrees;
};

/** A table of turns, and whose it is. */
export type TurnTable = { readonly name: string; readonly source: string; readonly bands: readonly TurnBand[] };

/** Structural bolting, both faces square to the bolt. The turns are published; their tolerances are from memory. */
export const RCSC_TURNS: TurnTable = {
  name: 'rcsc-turn-of-nut',
  source: 'RCSC Specification, table 8.2',
  bands: [
    { upToDiameters: 4, turn: degrees(120), tolerance: degrees(30) },
    { upToDiameters: 8, turn: degrees(180), tolerance: degrees(30) },
    { upToDiameters: 12, turn: degrees(240), tolerance: degrees(45) },
  ],
};

export type NoTurn = { readonly code: 'longer-than-table'; readonly diameters: number; readonly most: number };

/** The turn and its window, in degrees, for a bolt of this length and diameter in mm. Errors: `not-positive`; `longer-than-table`. */
export function turnFor(
  length: Millimetres,
  diameter: Millimetres,
  table: TurnTable,
): Result<{ readonly turn: Degrees; readonly window: Window }, NotPositive | NoTurn> {
  const bad = notPositive({ L: length, D: diameter });
  if (bad) return fail(bad);
  const diameters = steady(length / diameter);
  const band = table.bands.find((one) => diameters <= one.upToDiameters);
  if (!band)
    return fail({
      code: 'longer-than-table',
      diameters,
      most: Math.max(...table.bands.map((one) => one.upToDiameters)),
    });
  return ok({
    turn: band.turn,
    window: { least: band.turn - band.tolerance, most: band.turn + band.tolerance },
  });
}
