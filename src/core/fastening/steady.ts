import type { Window } from './quantity';

/**
 * A sum freed of the dust of binary fractions: to nine decimals, far below anything a hand or a gauge can tell in any
 * unit used here. Without it 30 - 0.1 - 29.9 would not be nothing, and a reading at its limit could fail.
 */
// The unit is kept: rounding changes the number, not what it measures.
export const steady = <T extends number>(value: T): T => (Number(value.toFixed(9)) + 0) as T;

/** Which side of a window a value lies on. Both ends are within; what is not a number never is. */
export function sideOf(value: number, window: Window): 'under' | 'within' | 'over' {
  const compared = steady(value);
  if (compared < steady(window.least)) return 'under';
  return compared <= steady(window.most) ? 'within' : 'over';
}
