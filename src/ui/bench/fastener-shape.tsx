import type { FastenerMark } from '../../core/view/bench-view';
import { growth } from './casting-frame';
import './fastener-shape.css';

type FastenerShapeProps = {
  readonly mark: FastenerMark;
  /** The place to look: drawn with the ring. */
  readonly here: boolean;
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  /** Left out in the key, where the shape alone is meant. */
  readonly number?: number;
  /** Degrees so far, where it is part way through an angle. */
  readonly turned?: string | undefined;
};

/**
 * A fastener from above. Its state is its shape, so that it can be told without colour and from across the bay: open
 * is an empty hexagon, done a solid one, part way one with a solid foot, in which its degrees so far stand; unknown is a dashed diamond with a question
 * mark, held a square with its corners crossed, not in this pass a small ring. Where the work is, a thick ring lies
 * round it as a socket would, and it is drawn larger.
 */
export function FastenerShape({ mark, here, x, y, radius, number, turned }: FastenerShapeProps) {
  const r = radius * growth(mark, here);
  return (
    <g class={`fastener fastener-${mark}`} transform={`translate(${x} ${y})`}>
      {here && <circle class="fastener-halo" r={r * (RING + 0.18)} />}
      {here && <circle class="fastener-ring" r={r * RING} stroke-width={r * 0.26} />}
      {!here && <path class="fastener-halo" d={outlineOf(mark, r * 1.12)} />}
      <path
        class="fastener-body"
        d={outlineOf(mark, r)}
        stroke-width={r * 0.11}
        stroke-dasharray={mark === 'unknown' ? `${r * 0.3} ${r * 0.2}` : undefined}
      />
      {mark === 'partial' && <path class="fastener-foot" d={foot(r, turned === undefined ? FOOT : HIGH_FOOT)} />}
      {mark === 'held' && <path class="fastener-corners" d={corners(r)} stroke-width={r * 0.11} />}
      {number !== undefined && (
        <text
          class="fastener-number"
          y={r * (turned === undefined ? BASELINE[mark] : OVER_DEGREES)}
          font-size={r * (turned === undefined ? SIZE[mark] : SIZE_OVER_DEGREES)}
        >
          {mark === 'unknown' ? `${number}?` : number}
        </text>
      )}
      {turned !== undefined && (
        <text class="fastener-turned" y={r * 0.64} font-size={r * (turned.length > 3 ? 0.58 : 0.72)}>
          {turned}
        </text>
      )}
    </g>
  );
}

/** Radius of the ring, in radii of what it lies round. */
const RING = 1.2;

/** Size of the number and how far its foot lies below the middle, in radii. */
const SIZE: Readonly<Record<FastenerMark, number>> = {
  open: 1.05,
  next: 1.05,
  partial: 0.95,
  done: 1.05,
  unknown: 0.88,
  held: 0.95,
  idle: 1.1,
};

const BASELINE: Readonly<Record<FastenerMark, number>> = {
  open: 0.37,
  next: 0.37,
  partial: 0.2,
  done: 0.37,
  unknown: 0.31,
  held: 0.34,
  idle: 0.39,
};

function outlineOf(mark: FastenerMark, r: number): string {
  switch (mark) {
    case 'unknown':
      return `M0 ${-r * 1.12}L${r * 1.12} 0L0 ${r * 1.12}L${-r * 1.12} 0Z`;
    case 'held':
      return `M${-r * 0.9} ${-r * 0.9}H${r * 0.9}V${r * 0.9}H${-r * 0.9}Z`;
    case 'idle':
      return `M${-r} 0A${r} ${r} 0 0 1 ${r} 0A${r} ${r} 0 0 1 ${-r} 0Z`;
    default:
      return `M${[0, 60, 120, 180, 240, 300].map((a) => onCircle(a, r)).join('L')}Z`;
  }
}

/** A corner of the hexagon. It has corners left and right, so that the number has the width. */
function onCircle(degrees: number, r: number): string {
  const angle = (degrees * Math.PI) / 180;
  return `${(r * Math.cos(angle)).toFixed(2)} ${(r * Math.sin(angle)).toFixed(2)}`;
}

/** Where the foot begins, in radii below the middle: below the number, or high enough to hold the degrees. */
const FOOT = 0.42;
const HIGH_FOOT = 0.04;

/** The number's foot and its size, in radii, where the degrees stand below it. */
const OVER_DEGREES = -0.08;
const SIZE_OVER_DEGREES = 0.9;

/** The lowest part of the hexagon, from `top` radii below its middle. */
function foot(r: number, top: number): string {
  const side = r * (1 - top / Math.sqrt(3));
  return `M${side} ${r * top}L${onCircle(60, r)}L${onCircle(120, r)}L${-side} ${r * top}Z`;
}

/** A stroke across each corner of the square, clear of the number. */
const corners = (r: number): string =>
  [
    [1, 1],
    [1, -1],
    [-1, 1],
    [-1, -1],
  ]
    .map(([x = 1, y = 1]) => `M${x * r * 0.36} ${y * r * 0.9}L${x * r * 0.9} ${y * r * 0.36}`)
    .join('');
