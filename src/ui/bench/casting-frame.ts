import { type Box, boxOf, longestSide, withMargin } from '../../core/drawing/box';
import type { Point } from '../../core/procedure/procedure';
import type { FastenerMark, PatternDrawing } from '../../core/view/bench-view';

/** The drawing's box in millimetres of the casting, and the sizes of what is drawn in it. */
export type CastingFrame = {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** Half the width of an ordinary fastener's shape. */
  readonly radius: number;
  /** Height of the letters of a landmark. */
  readonly label: number;
};

/** How large a shape is drawn, in radii: where the work is stands out, what is not in the pass stands back. */
export const growth = (mark: FastenerMark, here: boolean): number => (here ? 1.08 : mark === 'idle' ? 0.6 : 1);

/** How far the ring round the place of the work reaches, in radii of an ordinary fastener. */
const RING_REACH = 1.44;

/** Shapes as large as the closest pair of fasteners lets them be, within an eighth and a thirtieth of the casting. */
export function frameOf(drawing: PatternDrawing): CastingFrame {
  const { radius, label, box } = drawnBox(drawing);
  return { ...withMargin(box, label * 1.9), radius, label };
}

/** The sizes, the box of the casting, and the box that holds all of every shape too. */
function drawnBox({ outline, fasteners }: PatternDrawing): {
  readonly radius: number;
  readonly label: number;
  readonly bare: Box;
  readonly box: Box;
} {
  const bare = boxOf([...outline, ...fasteners.map((f) => f.at)]);
  const longest = longestSide(bare);
  const radius = Math.min(longest / 8, Math.max(longest / 30, room(fasteners)));
  const reach = radius * RING_REACH;
  const ends = fasteners.flatMap(({ at }) => [
    { x: at.x - reach, y: at.y - reach },
    { x: at.x + reach, y: at.y + reach },
  ]);
  return { radius, label: Math.max(radius * 0.95, longest / 22), bare, box: boxOf([...outline, ...ends]) };
}

/**
 * The radius at which the tightest pair of fasteners does not touch, wherever of the two the work is: its place moves
 * through the pass, and the sizes must not change from bolt to bolt.
 */
function room(fasteners: PatternDrawing['fasteners']): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [i, a] of fasteners.entries())
    for (const b of fasteners.slice(i + 1)) {
      const apart = Math.hypot(a.at.x - b.at.x, a.at.y - b.at.y);
      const idle = a.mark === 'idle' || b.mark === 'idle';
      const reach = RING_REACH + growth(idle ? 'idle' : 'open', false);
      least = Math.min(least, apart / reach);
    }
  return least;
}

export type LandmarkPlace = {
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Degrees; words along the left and right edges run upwards and downwards, to leave the width to the casting. */
  readonly turn: 0 | 90 | -90;
};

/** Where a landmark's words stand: outside the edge it is nearest to, so that they never cover a fastener. */
export function landmarkPlace(drawing: PatternDrawing, at: Point): LandmarkPlace {
  const { label, bare, box } = drawnBox(drawing);
  const away = label * 0.85;
  const toLeft = at.x - bare.left;
  const toRight = bare.right - at.x;
  const toTop = at.y - bare.top;
  const toBottom = bare.bottom - at.y;
  const least = Math.min(toLeft, toRight, toTop, toBottom);
  const across = anchorBetween(toLeft, toRight);
  if (least === toTop) return { x: at.x, y: box.top - away, anchor: across, turn: 0 };
  if (least === toBottom) return { x: at.x, y: box.bottom + away, anchor: across, turn: 0 };
  if (least === toLeft) return { x: box.left - away, y: at.y, anchor: anchorBetween(toBottom, toTop), turn: -90 };
  return { x: box.right + away, y: at.y, anchor: anchorBetween(toTop, toBottom), turn: 90 };
}

/** Words near an end of an edge run inwards from it, so that they stay beside the casting. */
function anchorBetween(toStart: number, toEnd: number): LandmarkPlace['anchor'] {
  const third = (toStart + toEnd) / 3;
  return toStart < third ? 'start' : toEnd < third ? 'end' : 'middle';
}
