import type { Entry } from '../job/entry';
import { exceptionsOf } from './exceptions';
import { grouped } from './grouped';
import { standing } from './standing';
import { type WorkStretch, workedBy } from './work-times';

/** One day of the job at a glance. */
export type DayRecord = {
  readonly day: string;
  readonly firstAt: number;
  readonly lastAt: number;
  readonly people: readonly string[];
  readonly workedMs: number;
  readonly stepsDone: number;
  readonly boltsDone: number;
  readonly exceptions: number;
};

/** The days of the job in order. `dayOf` names the day of a wall time: the zone is the caller's business. */
export function daysOf(
  entries: readonly Entry[],
  stretches: readonly WorkStretch[],
  dayOf: (at: number) => string,
): readonly DayRecord[] {
  const worked = workedBy(stretches, (one) => dayOf(one.at));
  const odd = grouped(exceptionsOf(entries), ({ entry }) => dayOf(entry.at));
  const live = grouped(standing(entries), ({ at }) => dayOf(at));
  return [...grouped(entries, ({ at }) => dayOf(at))].map(([day, all]) => {
    const kinds = (live.get(day) ?? []).map(({ kind }) => kind);
    return {
      day,
      firstAt: all[0]?.at ?? 0,
      lastAt: all.at(-1)?.at ?? 0,
      people: [...new Set(all.map(({ who }) => who))],
      workedMs: worked.get(day) ?? 0,
      stepsDone: kinds.filter((kind) => kind === 'step-done').length,
      boltsDone: kinds.filter((kind) => kind === 'bolt-done').length,
      exceptions: odd.get(day)?.length ?? 0,
    };
  });
}
