import { fail, ok, type Result } from '../result';
import { type NotPositive, notPositive } from './positive';
import { type Millimetres, millimetres, type SquareMillimetres, squareMillimetres } from './quantity';

/** A screw thread: metric (ISO 68-1 profile) or unified inch, both held in millimetres. */
export type Thread = {
  readonly form: 'metric' | 'unified';
  readonly diameter: Millimetres;
  readonly pitch: Millimetres;
};

export type ThreadError = NotPositive | { readonly code: 'pitch-too-coarse'; readonly given: Millimetres };

/** M10x1.25 is `metricThread(10, 1.25)`, both in mm. Errors: `not-positive`; `pitch-too-coarse` from a third of d up. */
export const metricThread = (diameter: Millimetres, pitch: Millimetres): Result<Thread, ThreadError> =>
  checked({ form: 'metric', diameter, pitch });

/** 3/8-16 is `unifiedThread(9.525 mm, 16)`: the pitch is 25.4 mm over the threads to the inch. Errors as metric. */
export const unifiedThread = (diameter: Millimetres, threadsPerInch: number): Result<Thread, ThreadError> =>
  checked({ form: 'unified', diameter, pitch: millimetres(25.4 / threadsPerInch) });

function checked(thread: Thread): Result<Thread, ThreadError> {
  const bad = notPositive({ d: thread.diameter, P: thread.pitch });
  if (bad) return fail(bad);
  return thread.pitch < thread.diameter / 3 ? ok(thread) : fail({ code: 'pitch-too-coarse', given: thread.pitch });
}

/** d2 = d - 0.649519 P, in mm (ISO 724). */
export const pitchDiameter = (thread: Thread): Millimetres => millimetres(thread.diameter - 0.649519 * thread.pitch);

/** d3 = d - 1.226869 P, in mm: the core of a bolt with a rounded root (ISO 898-1). */
export const rootDiameter = (thread: Thread): Millimetres => millimetres(thread.diameter - 1.226869 * thread.pitch);

/** What the stress diameter lies below the nominal one, in pitches: the two standards average different roots. */
const BELOW_NOMINAL = { metric: 0.938194, unified: 0.9743 } as const;

/**
 * The area that carries the tension, in mm2: As = pi/4 * (d - c P)^2, with c 0.938194 for metric threads (ISO 898-1)
 * and 0.9743 for unified ones (ASME B1.1).
 */
export const stressArea = (thread: Thread): SquareMillimetres =>
  squareMillimetres((Math.PI / 4) * (thread.diameter - BELOW_NOMINAL[thread.form] * thread.pitch) ** 2);
