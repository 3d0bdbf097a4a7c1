import type { Point } from '../procedure/procedure';

/** The edges of something drawn, in millimetres of the casting; y runs down. */
export type Box = { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };

/** The least box that holds all of some points; there must be one at least. */
export function boxOf(points: readonly Point[]): Box {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  return { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) };
}

/** Its longer side; never nothing, so that sizes can be taken from it. */
export const longestSide = ({ left, top, right, bottom }: Box): number => Math.max(right - left, bottom - top, 1);

/** With so much room on every side. */
export const withMargin = ({ left, top, right, bottom }: Box, margin: number) => ({
  left: left - margin,
  top: top - margin,
  width: right - left + 2 * margin,
  height: bottom - top + 2 * margin,
});
