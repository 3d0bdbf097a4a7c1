import type { TimelineLine } from '../../core/view/timeline-line';
import { clockTime, dayNames, quarterOfDay } from '../time-words';
import type { Say } from '../words/words';
import { isTrouble } from './day-book';

/** A quarter of an hour in which something was written. */
export type Quarter = {
  /** Quarters of an hour since midnight, 0 to 95. */
  readonly index: number;
  /** Its first line. */
  readonly seq: number;
  /** How much was done and measured that still stands. */
  readonly done: number;
  readonly isTrouble: boolean;
};

export type StripDay = {
  readonly day: string;
  /** As short as it can be told from the others at a glance: "Tuesday 4". */
  readonly name: string;
  readonly from: string;
  readonly to: string;
  readonly done: number;
  readonly trouble: number;
  readonly quarters: readonly Quarter[];
};

/** All days drawn from the same hour to the same hour, so that they can be held against each other. */
export type Strip = {
  readonly fromHour: number;
  readonly toHour: number;
  /** The most that was done in any quarter; at least one. */
  readonly most: number;
  readonly days: readonly StripDay[];
};

/** An hour's work alone would fill the strip with one block. */
const LEAST_HOURS = 6;

type Counted = {
  readonly at: number;
  readonly name: string;
  last: number;
  readonly quarters: Map<number, { -readonly [K in keyof Quarter]: Quarter[K] }>;
};

/** The days of a job at a glance: when there was work, and where there was trouble. */
export function stripOf(lines: readonly TimelineLine[], say: Say, timeZone?: string): Strip {
  const nameOf = dayNames(say, timeZone);
  const quarterAt = quarterOfDay(timeZone);
  const days = new Map<string, Counted>();
  for (const line of lines) {
    const { day, name } = nameOf(line.at);
    const counted = days.get(day) ?? { at: line.at, name, last: line.at, quarters: new Map() };
    days.set(day, counted);
    counted.last = line.at;
    const index = quarterAt(line.at);
    const quarter = counted.quarters.get(index) ?? { index, seq: line.seq, done: 0, isTrouble: false };
    counted.quarters.set(index, quarter);
    if (isDeed(line)) quarter.done += 1;
    if (isTrouble(line)) quarter.isTrouble = true;
  }
  const all = [...days.values()].flatMap(({ quarters }) => [...quarters.values()]);
  const hours = all.map(({ index }) => Math.floor(index / 4));
  const fromHour = Math.max(0, Math.min(...hours, Math.max(0, ...hours) + 1 - LEAST_HOURS));
  return {
    fromHour,
    toHour: Math.max(fromHour + LEAST_HOURS, ...hours.map((hour) => hour + 1)),
    most: Math.max(1, ...all.map(({ done }) => done)),
    days: [...days].map(([day, { at, name, last, quarters }]) => ({
      day,
      name,
      from: clockTime(at, timeZone),
      to: clockTime(last, timeZone),
      done: sum([...quarters.values()].map(({ done }) => done)),
      trouble: [...quarters.values()].filter((quarter) => quarter.isTrouble).length,
      quarters: [...quarters.values()],
    })),
  };
}

const isDeed = ({ kind, undone }: TimelineLine): boolean => !undone && (kind === 'done' || kind === 'measured');

const sum = (numbers: readonly number[]): number => numbers.reduce((total, n) => total + n, 0);

/** The first line of the quarter that lies `share` of the way along a day's stretch, or of the one after it. */
export function seqAt({ fromHour, toHour }: Strip, { quarters }: StripDay, share: number): number | undefined {
  const index = Math.floor(4 * (fromHour + share * (toHour - fromHour)));
  return (quarters.find((quarter) => quarter.index >= index) ?? quarters.at(-1))?.seq;
}
