import type { Entry } from '../../core/job/entry';
import type { Plan } from '../../core/job/plan';
import { quantity, type Reply, reply } from '../../core/phrasing/reply';
import type { Limit, PartSpec } from '../../core/procedure/procedure';
import { daysOf } from '../../core/record/days';
import type { LedgerLine } from '../../core/record/ends-ledger';
import { measurementsOf } from '../../core/record/measurements';
import { type PartRecord, partsOf } from '../../core/record/parts';
import type { WorkStretch } from '../../core/record/work-times';
import type { PlainTable } from '../../ui/record/plain-list';
import { clockTime, dateAndTime, dayTeller, hoursAndMinutes } from '../../ui/time-words';
import type { PlainKey, Say } from '../../ui/words/words';
import type { TextOf } from './entry-words';
import { toolList } from './tool-list';

export type RecordWords = { readonly say: Say; readonly show: (replies: readonly Reply[]) => string };

const PROGRESS: Readonly<Record<PartRecord['progress'], PlainKey>> = {
  'not-yet': 'part-not-yet',
  begun: 'part-begun',
  used: 'part-used',
};

const USE: Readonly<Record<PartSpec['use'], PlainKey>> = {
  new: 'part-new',
  reuse: 'part-reuse',
  measured: 'part-measured',
};

/** The plain tables of what was done: readings, debts, parts, tools. Empty ones are left out. */
export const deedLists = (
  plan: Plan,
  live: readonly Entry[],
  ledger: readonly LedgerLine[],
  words: RecordWords,
  textOf: TextOf,
): readonly PlainTable[] =>
  filled([
    readings(plan, live, words),
    ends(ledger, words, textOf),
    parts(plan, live, words),
    toolList(plan, live, words),
  ]);

/** The days of the job; none for a log without a line. */
export const daysList = (
  entries: readonly Entry[],
  stretches: readonly WorkStretch[],
  words: RecordWords,
): readonly PlainTable[] => filled([days(entries, stretches, words)]);

const filled = (tables: readonly PlainTable[]): readonly PlainTable[] => tables.filter(({ rows }) => rows.length > 0);

function readings(plan: Plan, live: readonly Entry[], { say, show }: RecordWords): PlainTable {
  const rows = measurementsOf(plan, live).map((m) => ({
    key: String(m.seq),
    cells: [
      m.step,
      m.say,
      show([reply('shown-value', { value: quantity({ value: m.value, unit: m.unit }) })]),
      m.limit ? limitWords(m.limit, say) : '',
      say(m.within === null ? 'verdict-none' : m.within ? 'verdict-within' : 'verdict-outside'),
      dateAndTime(say, m.at),
      m.who,
    ],
  }));
  const columns = [
    say('column-step'),
    say('column-reading'),
    say('column-value'),
    say('column-limit'),
    say('column-verdict'),
    say('column-when'),
    say('column-who'),
  ];
  return { say: say('list-readings', { count: rows.length }), columns, rows };
}

function limitWords({ least, most, whose }: Limit, say: Say): string {
  const parts = [
    ...(least ? [say('limit-least', { value: least.printed })] : []),
    ...(most ? [say('limit-most', { value: most.printed })] : []),
    say('limit-whose', { whose }),
  ];
  return parts.join(', ');
}

function ends(lines: readonly LedgerLine[], { say, show }: RecordWords, textOf: TextOf): PlainTable {
  const rows = lines.map(({ end, what, opened, closed }) => ({
    key: `${end} ${opened.seq}`,
    cells: [
      what.why === 'dropped' ? show([reply('end-dropped', {})]) : what.what,
      dateAndTime(say, opened.at),
      show([reply(`milestone-${what.blocks}`, {})]),
      closed ? say('end-settled', { when: dateAndTime(say, closed.at), how: textOf(closed) }) : say('end-open'),
    ],
  }));
  const columns = [say('column-end'), say('column-opened'), say('column-blocks'), say('column-closed')];
  return { say: say('list-ends', { open: lines.filter(({ closed }) => closed === null).length }), columns, rows };
}

function parts(plan: Plan, live: readonly Entry[], { say }: RecordWords): PlainTable {
  const rows = partsOf(plan, live).map(({ part, progress, isListed }) => {
    const use = say(USE[part.use]);
    const done = say(PROGRESS[progress]);
    return {
      key: part.id,
      cells: [
        part.say,
        String(part.quantity),
        part.consumable ? say('part-consumable', { use }) : use,
        isListed ? say('part-listed', { progress: done }) : done,
      ],
    };
  });
  const columns = [say('column-part'), say('column-quantity'), say('column-use'), say('column-progress')];
  return { say: say('list-parts', { count: rows.length }), columns, rows };
}

function days(entries: readonly Entry[], stretches: readonly WorkStretch[], { say }: RecordWords): PlainTable {
  const rows = daysOf(entries, stretches, dayTeller(say)).map((d) => ({
    key: d.day,
    cells: [
      d.day,
      `${clockTime(d.firstAt)}–${clockTime(d.lastAt)}`,
      d.people.join(', '),
      say('hours-minutes', hoursAndMinutes(d.workedMs)),
      say('day-done', { steps: d.stepsDone, bolts: d.boltsDone }),
      String(d.exceptions),
    ],
  }));
  const columns = [
    say('column-day'),
    say('column-time'),
    say('column-who'),
    say('column-worked'),
    say('column-done'),
    say('column-odd'),
  ];
  return { say: say('list-days', { count: rows.length }), columns, rows };
}
