import { lastDigitOf } from './printed-number';
import { convert, type Printed } from './quantity';
import { type Dimension, dimensionOf, UNITS } from './unit';

/** Two figures printed beside each other that are not the same figure: one of them is a misprint. */
export type PairDisagreement = {
  readonly code: 'pair-disagrees';
  readonly first: Printed;
  readonly second: Printed;
  /** The second figure in the unit of the first; for a range, the end that is off. */
  readonly secondInFirst: number;
  /** How far the second lies from the first, in percent of the first. */
  readonly percent: number;
};

/**
 * How far apart the two figures of a pair may be beyond the rounding of their last printed digits, as a share.
 * Common practice for torque is 1 %; temperatures have an arbitrary zero, so a share of them means nothing.
 */
const SLACK: Readonly<Partial<Record<Dimension, number>>> = { temperature: 0, angle: 0 };
const USUAL_SLACK = 0.01;

/** All figures printed beside the first that disagree with it. */
export const pairDisagreements = (figure: Printed): readonly PairDisagreement[] =>
  (figure.also ?? []).map((second) => pairDisagreement(figure, second)).filter((found) => found !== null);

/**
 * Compares two printed figures of one dimension. Each may be off by half its last printed digit, and the pair by 1 %
 * more; outside that it is a misprint. Different dimensions are refused when the figure is read, so here they agree
 * with nothing and the second reads as NaN.
 */
function pairDisagreement(first: Printed, second: Printed): PairDisagreement | null {
  const slack = SLACK[dimensionOf(first.unit)] ?? USUAL_SLACK;
  for (const [ours, theirs] of endsOf(first, second)) {
    const converted = convert({ value: theirs, unit: second.unit }, first.unit);
    const secondInFirst = converted.ok ? converted.value : Number.NaN;
    const step = UNITS[second.unit].factor / UNITS[first.unit].factor;
    const rounding = (lastDigitOf(first.printed) + lastDigitOf(second.printed) * step) / 2;
    const apart = Math.abs(secondInFirst - ours);
    // A hair is added so that figures exactly half a digit apart pass despite binary fractions.
    if (apart <= (rounding + slack * Math.abs(ours)) * (1 + 1e-9)) continue;
    return { code: 'pair-disagrees', first, second, secondInFirst, percent: (100 * apart) / Math.abs(ours) };
  }
  return null;
}

function endsOf(first: Printed, second: Printed): readonly (readonly [number, number])[] {
  if (!first.window || !second.window) return [[first.value, second.value]];
  return [
    [first.window.least, second.window.least],
    [first.window.most, second.window.most],
  ];
}
