import type { Pass, Step } from '../procedure/procedure';
import type { Fastening } from '../sums/estimate';
import { patternOf } from './announce/fastener';
import type { Job } from './job';

/** The thread and grade of the fasteners of a pass, where the document names one thread for all of them. */
export function fastenedBy(job: Job, step: Step, pass: Pass): Fastening | undefined {
  const all = (patternOf(job, step)?.fasteners ?? []).filter(({ number }) => pass.order.includes(number));
  const [first] = all;
  if (first?.thread === undefined) return undefined;
  const isOne = all.every(({ thread, grade }) => thread === first.thread && grade === first.grade);
  return isOne ? { thread: first.thread, grade: first.grade ?? null } : undefined;
}
