import { describe } from '../../core/job/describe';
import type { Entry } from '../../core/job/entry';
import type { Plan } from '../../core/job/plan';
import { heardClipId } from '../../core/log/heard-clip';
import { exceptionsOf } from '../../core/record/exceptions';
import { type BoltRecord, fastenerRecord, type PassRecord } from '../../core/record/fasteners';
import { grouped } from '../../core/record/grouped';
import { phaseTimes, stretchesOf } from '../../core/record/work-times';
import { timelineOf } from '../../core/view/build-timeline';
import type { PassCell, PassTable } from '../../ui/record/bolt-table';
import type { RecordProps } from '../../ui/record/record';
import { clockTime, dateAndTime } from '../../ui/time-words';
import { type RecordWords, recordLists } from './record-lists';

export type RecordBody = Pick<RecordProps, 'lines' | 'tables' | 'phases' | 'exceptions' | 'lists'>;

/** All of the record that follows from the log, in words ready to draw. */
export const recordBody = (
  plan: Plan,
  entries: readonly Entry[],
  heard: { readonly has: (clip: string) => boolean },
  words: RecordWords,
): RecordBody => {
  const stretches = stretchesOf(plan, entries);
  return {
    lines: timelineOf(plan, entries, words.show).map((line) => {
      const clip = heardClipId(line);
      return heard.has(clip) ? { ...line, clip } : line;
    }),
    tables: boltTables(plan, entries, words),
    phases: phaseTimes(plan, stretches),
    exceptions: exceptionLines(plan, entries, words),
    lists: recordLists(plan, entries, stretches, words),
  };
};

function exceptionLines(plan: Plan, entries: readonly Entry[], { say, show }: RecordWords) {
  return exceptionsOf(entries).map(({ entry, ending, closedBy }) => {
    const told = { what: show([describe(plan, entry)]), when: dateAndTime(say, entry.at) };
    const text = closedBy
      ? say('exception-closed', {
          ...told,
          closed: dateAndTime(say, closedBy.at),
          how: show([describe(plan, closedBy)]),
        })
      : say(ending === 'open' ? 'exception-open' : 'exception-told', told);
    return { seq: entry.seq, text };
  });
}

function boltTables(plan: Plan, entries: readonly Entry[], words: RecordWords): readonly PassTable[] {
  const isOfMany = new Set(entries.map(({ who }) => who)).size > 1;
  return [...grouped(fastenerRecord(plan, entries), ({ step }) => step).values()].map((passes) => ({
    say: passes[0]?.tightening ?? '',
    passes: passes.map(({ say, target }) => ({ say, target: target?.printed ?? '' })),
    bolts: [...new Set(passes.flatMap(({ bolts }) => bolts.map(({ bolt }) => bolt)))]
      .toSorted((a, b) => a - b)
      .map((number) => ({
        number,
        cells: passes.map((pass) => {
          const bolt = pass.bolts.find((b) => b.bolt === number);
          return bolt ? cellOf(plan, pass, bolt, isOfMany, words) : null;
        }),
      })),
  }));
}

function cellOf(
  plan: Plan,
  pass: PassRecord,
  bolt: BoltRecord,
  isOfMany: boolean,
  { say, show }: RecordWords,
): PassCell {
  const { confirmed, setting, swings, exceptions } = bolt;
  const isOffTarget = setting !== null && setting.value !== pass.target?.value;
  const text = [
    ...(swings.length > 1 || bolt.state === 'partial' ? [`${swings.join(' + ')}°`] : []),
    ...(setting && isOffTarget ? [say('cell-setting', { value: setting.value, unit: setting.unit })] : []),
    ...(confirmed ? [clockTime(confirmed.at)] : []),
    ...(confirmed && isOfMany ? [say('cell-person', { who: confirmed.who })] : []),
  ].join(', ');
  return {
    mark: bolt.state,
    text,
    exception: exceptions.length === 0 ? null : exceptions.map((e) => show([describe(plan, e)])).join(' '),
    seq: confirmed?.seq ?? exceptions.at(-1)?.seq ?? null,
  };
}
