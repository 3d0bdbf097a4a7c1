import { fail, type Result } from '../result';
import { millimetres } from './quantity';
import { metricThread, type Thread, type ThreadError, unifiedThread } from './thread';

/** The pitch of a metric size named without one, in mm: the coarse series of ISO 261. */
const COARSE: ReadonlyMap<number, number> = new Map([
  [3, 0.5],
  [4, 0.7],
  [5, 0.8],
  [6, 1],
  [8, 1.25],
  [10, 1.5],
  [12, 1.75],
  [14, 2],
  [16, 2],
  [18, 2.5],
  [20, 2.5],
  [24, 3],
]);

export type NoThread = { readonly code: 'not-a-thread'; readonly given: string };

/**
 * A thread from its designation: "M10x1.25" or "M10" (ISO 261), "3/8-16" (ASME B1.1, inches and threads to the inch).
 * Errors: `not-a-thread`, with what was given; those of the thread itself.
 */
export function threadNamed(text: string): Result<Thread, NoThread | ThreadError> {
  const metric = /^M(\d+(?:\.\d+)?)(?:\s*[x×]\s*(\d+(?:\.\d+)?))?$/.exec(text.trim());
  if (metric) {
    const diameter = Number(metric[1]);
    const pitch = metric[2] === undefined ? COARSE.get(diameter) : Number(metric[2]);
    if (pitch !== undefined) return metricThread(millimetres(diameter), millimetres(pitch));
  }
  const inch = /^(?:(\d+)|(\d+)\/(\d+))\s*-\s*(\d+)$/.exec(text.trim());
  if (inch && Number(inch[3] ?? 1) > 0) {
    const inches = inch[1] === undefined ? Number(inch[2]) / Number(inch[3]) : Number(inch[1]);
    return unifiedThread(millimetres(25.4 * inches), Number(inch[4]));
  }
  return fail({ code: 'not-a-thread', given: text });
}
