import type { Field } from './csv';
import type { BoltRecord, PassRecord } from './fasteners';

/** The columns of the fastener table, in their order. Their headings are words of the language. */
export const FASTENER_COLUMNS = [
  'tightening',
  'pass',
  'kind',
  'bolt',
  'where',
  'target',
  'unit',
  'least',
  'most',
  'lubrication',
  'state',
  'setting',
  'setting-unit',
  'swings',
  'confirmed-at',
  'person',
  'means',
  'exceptions',
] as const;

export type FastenerColumn = (typeof FASTENER_COLUMNS)[number];

export type FastenerWords = {
  readonly state: (state: BoltRecord['state']) => string;
  /** How a confirmation was given, so that nobody takes it for a reading of a sensor: "said by voice". */
  readonly means: (means: NonNullable<BoltRecord['confirmed']>['means']) => string;
  readonly exception: (entry: BoltRecord['exceptions'][number]) => string;
};

/** One row a fastener and pass. Times are ISO 8601 in UTC; swings are joined by a plus. */
export const fastenerRows = (passes: readonly PassRecord[], words: FastenerWords): readonly (readonly Field[])[] =>
  passes.flatMap((pass) =>
    pass.bolts.map((bolt) => FASTENER_COLUMNS.map((column) => field(column, pass, bolt, words))),
  );

function field(column: FastenerColumn, pass: PassRecord, bolt: BoltRecord, words: FastenerWords): Field {
  const { confirmed } = bolt;
  switch (column) {
    case 'tightening':
      return pass.tightening;
    case 'pass':
      return pass.say;
    case 'kind':
      return pass.kind;
    case 'bolt':
      return bolt.bolt;
    case 'where':
      return bolt.where;
    case 'target':
      return pass.target?.value ?? null;
    case 'unit':
      return pass.target?.unit ?? null;
    case 'least':
      return pass.window?.least ?? null;
    case 'most':
      return pass.window?.most ?? null;
    case 'lubrication':
      return pass.lubrication;
    case 'state':
      return words.state(bolt.state);
    case 'setting':
      return bolt.setting?.value ?? null;
    case 'setting-unit':
      return bolt.setting?.unit ?? null;
    case 'swings':
      return bolt.swings.length === 0 ? null : bolt.swings.join(' + ');
    case 'confirmed-at':
      return confirmed ? new Date(confirmed.at).toISOString() : null;
    case 'person':
      return confirmed?.who ?? null;
    case 'means':
      return confirmed ? words.means(confirmed.means) : null;
    case 'exceptions':
      return bolt.exceptions.map(words.exception).join(' ');
  }
}
