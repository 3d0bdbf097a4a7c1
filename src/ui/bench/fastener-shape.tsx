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
};

/**
 * A fastener from above. Its state is its shape, so that it can be told without colour and from across the bay: open
 * is an empty hexagon, done a solid one, part way one with a solid foot; unknown is a dashed diamond with a question
 * mark, held a square with its corners crossed, not in this pass a small ring. Where the work is, a thick ring lies
 * round it as a socket would, and it is drawn larger.
 */
export function FastenerShape({ mark, here, x, y, radius, number }: FastenerShapeProps) {
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
      {mark === 'partial' && <path class="fastener-foot" d={foot(r)} />}
      {mark === 'held' && <path class="fastener-corners" d={corners(r)} stroke-width={r * 0.11} />}
      {number !== undefined && (
        <text class="fastener-number" y={r * BASELINE[mark]} font-size={r * SIZE[mark]}>
          {mark === 'unknown' ? `${number}?` : number}
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

/** The lowest part of the hexagon, below the number. */
const foot = (r: number): string =>
  `M${r * 0.76} ${r * 0.42}L${onCircle(60, r)}L${onCircle(120, r)}L${-r * 0.76} ${r * 0.42}Z`;

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
