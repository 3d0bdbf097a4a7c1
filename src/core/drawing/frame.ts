import type { Pattern, Point } from '../procedure/procedure';
import { type Box, boxOf, longestSide, withMargin } from './box';

/** The box of a drawing in millimetres of the casting, with room around it for the landmarks. */
export type Frame = {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** Half the width of a fastener as it is drawn, never so wide that two of them touch. */
  readonly radius: number;
  readonly letter: number;
  readonly inner: Box;
};

export function frameOf({ outline, fasteners }: Pattern): Frame {
  const places = fasteners.map(({ at }) => at);
  const inner = boxOf([...outline, ...places]);
  const longest = longestSide(inner);
  const radius = Math.min(longest / 12, 0.36 * closest(places, longest));
  const letter = Math.max(radius, longest / 22);
  return { ...withMargin(inner, radius * 1.3 + letter * 1.6), radius, letter, inner };
}

const closest = (places: readonly Point[], otherwise: number): number =>
  Math.min(
    otherwise,
    ...places.flatMap((a, index) => places.slice(index + 1).map((b) => Math.hypot(a.x - b.x, a.y - b.y))),
  );

type LabelPlace = Point & { readonly anchor: 'start' | 'middle' | 'end'; readonly turn: 0 | 90 | -90 };

/** Outside the edge a landmark is nearest to, so that its words never cover a fastener. */
export function labelPlace({ inner, radius, letter, left, width }: Frame, at: Point): LabelPlace {
  const away = radius * 1.3 + letter * 0.6;
  const gaps = [at.y - inner.top, inner.bottom - at.y, at.x - inner.left, inner.right - at.x];
  const nearest = gaps.indexOf(Math.min(...gaps));
  const third = width / 3;
  const anchor = at.x - left < third ? 'start' : left + width - at.x < third ? 'end' : 'middle';
  switch (nearest) {
    case 0:
      return { x: at.x, y: inner.top - away, anchor, turn: 0 };
    case 1:
      return { x: at.x, y: inner.bottom + away + letter * 0.5, anchor, turn: 0 };
    case 2:
      return { x: inner.left - away, y: at.y, anchor: 'middle', turn: -90 };
    default:
      return { x: inner.right + away, y: at.y, anchor: 'middle', turn: 90 };
  }
}
