/** A fastener's number and its place in millimetres, x to the right and y down as drawn. */
export type Spot = { readonly number: number; readonly at: { readonly x: number; readonly y: number } };

/**
 * An order from the middle of a head outward. The distance from the centre, to a tenth of a millimetre, never falls;
 * among fasteners equally far out the next is the one farthest from the last, so that sides alternate, then the lower
 * number. A proposal to draw and compare: on a real head the document's own order is the authority.
 */
export function centreOut(spots: readonly Spot[]): readonly number[] {
  const centre = centreOf(spots);
  const rings = new Map<number, Spot[]>();
  for (const spot of spots) {
    const ring = Math.round(apart(spot.at, centre) * 10);
    rings.set(ring, [...(rings.get(ring) ?? []), spot]);
  }
  const order: Spot[] = [];
  for (const [, ring] of [...rings].sort(([a], [b]) => a - b)) {
    const left = ring.sort((a, b) => a.number - b.number);
    while (left.length > 0) order.push(...left.splice(farthestFrom(order.at(-1), left), 1));
  }
  return order.map((spot) => spot.number);
}

/**
 * A cross pattern for fasteners on a circle: each is followed by its opposite, and where the count divides by four then
 * by the two at right angles. An odd count is stepped across as a star. Starts at the lowest number and goes by place,
 * not by number, so it holds whichever way the fasteners are numbered. Follows the invariants of the ASME PCC-1 tables.
 */
export function cross(spots: readonly Spot[]): readonly number[] {
  const ring = clockwise(spots);
  const quarter = ring.length / 4;
  const steps =
    ring.length % 4 === 0 ? [0, 2 * quarter, quarter, 3 * quarter] : ring.length % 2 === 0 ? [0, 2 * quarter] : [0];
  const starts = strideThrough(ring.length / steps.length);
  return starts.flatMap((start) => steps.flatMap((step) => ring[start + step]?.number ?? []));
}

/** The order in which to slacken what was tightened in this order. */
export const slackeningOrder = (order: readonly number[]): readonly number[] => order.toReversed();

/** The middle of the smallest box around the spots, in millimetres. */
export function centreOf(spots: readonly Spot[]): Spot['at'] {
  const middle = (values: readonly number[]) =>
    values.length === 0 ? 0 : (Math.min(...values) + Math.max(...values)) / 2;
  return { x: middle(spots.map((s) => s.at.x)), y: middle(spots.map((s) => s.at.y)) };
}

const apart = (a: Spot['at'], b: Spot['at']): number => Math.hypot(a.x - b.x, a.y - b.y);

function farthestFrom(last: Spot | undefined, left: readonly Spot[]): number {
  if (!last) return 0;
  const distances = left.map((spot) => Math.round(apart(spot.at, last.at) * 10));
  return distances.indexOf(Math.max(...distances));
}

/** Clockwise as drawn (y grows downward), from the lowest number on. */
function clockwise(spots: readonly Spot[]): readonly Spot[] {
  const mean = (values: readonly number[]) => values.reduce((sum, v) => sum + v, 0) / values.length;
  const centre = { x: mean(spots.map((s) => s.at.x)), y: mean(spots.map((s) => s.at.y)) };
  const angle = (spot: Spot) => Math.atan2(spot.at.y - centre.y, spot.at.x - centre.x);
  const ring = spots.toSorted((a, b) => angle(a) - angle(b));
  const first = ring.findIndex((spot) => spot.number === Math.min(...spots.map((s) => s.number)));
  return [...ring.slice(first), ...ring.slice(0, first)];
}

/** 0..count-1 in strides of half the count, starting again at the lowest one left: 0 2 4 1 3, or 0 3 1 4 2 5. */
function strideThrough(count: number): readonly number[] {
  const stride = Math.max(1, Math.floor(count / 2));
  const order: number[] = [];
  for (let start = 0; order.length < count; start++)
    for (let i = start; i < count && !order.includes(i); i += stride) order.push(i);
  return order;
}
