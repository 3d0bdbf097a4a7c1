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

type Box = { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };

/** How large a shape is drawn, in radii: where the work is stands out, what is not in the pass stands back. */
export const growth = (mark: FastenerMark, here: boolean): number => (here ? 1.15 : mark === 'idle' ? 0.6 : 1);

/** Shapes as large as the closest pair of fasteners lets them be, within a tenth to a thirtieth of the casting. */
export function frameOf(drawing: PatternDrawing): CastingFrame {
  const box = boxOf(drawing);
  const longest = Math.max(box.right - box.left, box.bottom - box.top, 1);
  const radius = Math.min(longest / 10, Math.max(longest / 30, room(drawing)));
  const label = Math.max(radius * 0.95, longest / 22);
  const margin = label * 1.9;
  return {
    left: box.left - margin,
    top: box.top - margin,
    width: box.right - box.left + 2 * margin,
    height: box.bottom - box.top + 2 * margin,
    radius,
    label,
  };
}

function boxOf({ outline, fasteners }: PatternDrawing): Box {
  const points = [...outline, ...fasteners.map((f) => f.at)];
  const xs = points.map((p) => p.x);
  const ys = points.map((p) => p.y);
  return { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) };
}

/**
 * The radius at which the tightest pair of fasteners just does not touch. The place of the work moves through the
 * pass, so it counts as an ordinary one: the sizes must not change from bolt to bolt.
 */
function room({ fasteners }: PatternDrawing): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [i, a] of fasteners.entries())
    for (const b of fasteners.slice(i + 1)) {
      const apart = Math.hypot(a.at.x - b.at.x, a.at.y - b.at.y);
      least = Math.min(least, (0.95 * apart) / (growth(a.mark, false) + growth(b.mark, false)));
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
export function landmarkPlace(drawing: PatternDrawing, at: { readonly x: number; readonly y: number }): LandmarkPlace {
  const box = boxOf(drawing);
  const { label } = frameOf(drawing);
  const away = label * 0.85;
  const toLeft = at.x - box.left;
  const toRight = box.right - at.x;
  const toTop = at.y - box.top;
  const toBottom = box.bottom - at.y;
  const least = Math.min(toLeft, toRight, toTop, toBottom);
  const third = (box.right - box.left) / 3;
  const anchor = toLeft < third ? 'start' : toRight < third ? 'end' : 'middle';
  if (least === toTop) return { x: at.x, y: box.top - away, anchor, turn: 0 };
  if (least === toBottom) return { x: at.x, y: box.bottom + away, anchor, turn: 0 };
  if (least === toLeft) return { x: box.left - away, y: at.y, anchor: 'middle', turn: -90 };
  return { x: box.right + away, y: at.y, anchor: 'middle', turn: 90 };
}
