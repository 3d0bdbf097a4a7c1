import { describe } from '../../core/job/describe';
import type { Entry } from '../../core/job/entry';
import { fold } from '../../core/job/evolve';
import type { Plan } from '../../core/job/plan';
import { csvOf } from '../../core/record/csv';
import { FASTENER_COLUMNS, type FastenerColumn, fastenerRows } from '../../core/record/fastener-table';
import { type BoltRecord, fastenerRecord } from '../../core/record/fasteners';
import type { Means } from '../../core/record/standing';
import type { PlainKey } from '../../ui/words/words';
import type { RecordWords } from './record-lists';

const HEADING: Readonly<Record<FastenerColumn, PlainKey>> = {
  tightening: 'csv-tightening',
  pass: 'csv-pass',
  kind: 'csv-kind',
  bolt: 'csv-bolt',
  where: 'csv-where',
  target: 'csv-target',
  unit: 'csv-unit',
  least: 'csv-least',
  most: 'csv-most',
  lubrication: 'csv-lubrication',
  state: 'csv-state',
  setting: 'csv-setting',
  'setting-unit': 'csv-setting-unit',
  swings: 'csv-swings',
  'confirmed-at': 'csv-confirmed-at',
  person: 'csv-person',
  means: 'csv-means',
  exceptions: 'csv-exceptions',
};

const STATE: Readonly<Record<BoltRecord['state'], PlainKey>> = {
  open: 'mark-open',
  partial: 'mark-partial',
  done: 'mark-done',
  unknown: 'mark-unknown',
  held: 'mark-held',
};

const MEANS: Readonly<Record<Means, PlainKey>> = {
  voice: 'means-voice',
  touch: 'means-touch',
  typed: 'means-typed',
};

/** The fastener table of a job as a file. Every row says how its value is known: nothing in it was measured. */
export function fastenerCsv(plan: Plan, entries: readonly Entry[], { say, show }: RecordWords): string {
  const rows = fastenerRows(fastenerRecord(fold(plan, entries), entries), {
    state: (state) => say(STATE[state]),
    means: (means) => say(means ? MEANS[means] : 'means-unknown'),
    exception: (entry) => show([describe(plan, entry)]),
  });
  return csvOf([FASTENER_COLUMNS.map((column) => say(HEADING[column])), ...rows]);
}
