import { type Entry, isTalk } from '../../core/job/entry';
import type { Job } from '../../core/job/job';
import type { Plan } from '../../core/job/plan';
import { heardClipId } from '../../core/log/heard-clip';
import { endsLedger } from '../../core/record/ends-ledger';
import { exceptionsOf } from '../../core/record/exceptions';
import { type BoltRecord, fastenerRecord, type PassRecord } from '../../core/record/fasteners';
import { grouped } from '../../core/record/grouped';
import { standing } from '../../core/record/standing';
import { phaseTimes, workFold } from '../../core/record/work-times';
import { timelineOf } from '../../core/view/build-timeline';
import type { TimelineLine } from '../../core/view/timeline-line';
import type { PassCell, PassTable } from '../../ui/record/bolt-table';
import type { RecordProps } from '../../ui/record/record';
import { clockTime, dateAndTime } from '../../ui/time-words';
import { entryWords, type TextOf } from './entry-words';
import { daysList, deedLists, type RecordWords } from './record-lists';

export type RecordBody = Pick<RecordProps, 'lines' | 'tables' | 'phases' | 'exceptions' | 'lists'>;

/** The clips kept of what was heard, by their ids. */
type Heard = Pick<ReadonlyMap<string, unknown>, 'has' | 'size'>;

export type MakeBody = (entries: readonly Entry[], heard: Heard) => RecordBody;

/**
 * All of the record of one job that follows from its log, in words ready to draw. It is asked again whenever the log has
 * grown, so it goes on from what it knows: talk, which is most of a log, changes lines and hours and nothing else.
 */
export function bodyMaker(plan: Plan, words: RecordWords): MakeBody {
  const textOf = entryWords(plan, words);
  const follow = workFold(plan);
  const deeds = sinceLastDeed(deedMaker(plan, words, textOf));
  return (entries, heard) => {
    const { job, stretches } = follow(entries);
    const { tables, exceptions, lists } = deeds(job, entries);
    return {
      lines: withClips(timelineOf(plan, entries, textOf), heard),
      tables,
      phases: phaseTimes(plan, stretches),
      exceptions,
      lists: [...lists, ...daysList(entries, stretches, words)],
    };
  };
}

/** Lines with what was heard kept beside them, where anything was kept at all. */
const withClips = (lines: readonly TimelineLine[], heard: Heard): readonly TimelineLine[] =>
  heard.size === 0
    ? lines
    : lines.map((line) => {
        const clip = heardClipId(line);
        return heard.has(clip) ? { ...line, clip } : line;
      });

type Deeds = Pick<RecordBody, 'tables' | 'exceptions'> & { readonly lists: NonNullable<RecordBody['lists']> };
type DeedsOf = (job: Job, entries: readonly Entry[]) => Deeds;

function deedMaker(plan: Plan, words: RecordWords, textOf: TextOf): DeedsOf {
  const ledger = endsLedger(plan);
  return (job, entries) => {
    const live = standing(entries);
    return {
      tables: boltTables(job, entries, words, textOf),
      exceptions: exceptionLines(entries, words, textOf),
      lists: deedLists(plan, live, ledger(live), words, textOf),
    };
  };
}

/** The same answer until something was done, not only said. */
function sinceLastDeed(make: DeedsOf): DeedsOf {
  let last: { readonly deed: Entry | undefined; readonly deeds: Deeds } | null = null;
  return (job, entries) => {
    const deed = entries.findLast((entry) => !isTalk(entry));
    if (last === null || last.deed !== deed) last = { deed, deeds: make(job, entries) };
    return last.deeds;
  };
}

function exceptionLines(entries: readonly Entry[], { say }: RecordWords, textOf: TextOf) {
  return exceptionsOf(entries).map(({ entry, ending, closedBy }) => {
    const when = dateAndTime(say, entry.at);
    const taken = entry.kind === 'undone' ? entryAt(entries, entry.target) : undefined;
    if (taken) return { seq: entry.seq, text: say('exception-undone', { when, what: textOf(taken) }) };
    const told = { what: textOf(entry), when };
    const text = closedBy
      ? say('exception-closed', { ...told, closed: dateAndTime(say, closedBy.at), how: textOf(closedBy) })
      : say(ending === 'open' ? 'exception-open' : 'exception-told', told);
    return { seq: entry.seq, text };
  });
}

/** A log counts its entries one by one. */
const entryAt = (entries: readonly Entry[], seq: number): Entry | undefined => entries[seq - (entries[0]?.seq ?? 1)];

function boltTables(job: Job, entries: readonly Entry[], words: RecordWords, textOf: TextOf): readonly PassTable[] {
  const isOfMany = new Set(entries.map(({ who }) => who)).size > 1;
  return [...grouped(fastenerRecord(job, entries), ({ step }) => step).values()].map((passes) => ({
    say: passes[0]?.tightening ?? '',
    passes: passes.map(({ say, target }) => ({ say, target: target?.printed ?? '' })),
    bolts: [...new Set(passes.flatMap(({ bolts }) => bolts.map(({ bolt }) => bolt)))]
      .toSorted((a, b) => a - b)
      .map((number) => ({
        number,
        cells: passes.map((pass) => {
          const bolt = pass.bolts.find((b) => b.bolt === number);
          return bolt ? cellOf(pass, bolt, isOfMany, words, textOf) : null;
        }),
      })),
  }));
}

function cellOf(pass: PassRecord, bolt: BoltRecord, isOfMany: boolean, { say }: RecordWords, textOf: TextOf): PassCell {
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
    exception: exceptions.length === 0 ? null : exceptions.map(textOf).join(' '),
    seq: confirmed?.seq ?? exceptions.at(-1)?.seq ?? null,
  };
}
