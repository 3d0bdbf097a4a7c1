import { expect, test } from 'vitest';
import { csvOf, type Field } from '../../../src/core/record/csv';
import { FASTENER_COLUMNS, fastenerRows } from '../../../src/core/record/fastener-table';
import { fastenerRecord } from '../../../src/core/record/fasteners';
import { atFirstPass, bolt, setAt } from '../job/workbench';

test.each<{ readonly rows: readonly (readonly Field[])[]; readonly text: string; readonly source: string }>([
  { rows: [['aaa', 'bbb', 'ccc']], text: 'aaa,bbb,ccc\r\n', source: 'RFC 4180, 2, rule 1' },
  { rows: [['aaa', 'b\r\nbb']], text: 'aaa,"b\r\nbb"\r\n', source: 'RFC 4180, 2, rule 6' },
  { rows: [['a,b', 'c']], text: '"a,b",c\r\n', source: 'RFC 4180, 2, rule 6' },
  { rows: [['b"bb']], text: '"b""bb"\r\n', source: 'RFC 4180, 2, rule 7' },
  { rows: [[' spaced ']], text: ' spaced \r\n', source: 'RFC 4180, 2, rule 4: spaces are part of a field' },
  { rows: [[null, 0, -1.5]], text: ',0,-1.5\r\n', source: 'numbers go out as they are' },
  { rows: [['=1+1', '@x', '+y', '-z']], text: "'=1+1,'@x,'+y,'-z\r\n", source: 'words are never a formula' },
  { rows: [['=a,"b"']], text: '"\'=a,""b"""\r\n', source: 'both at once' },
])('$source', ({ rows, text }) => {
  expect(csvOf(rows)).toBe(text);
});

test('the fastener table has a row for every bolt of every pass, as wide as its headings', () => {
  const w = atFirstPass();
  w.all(setAt(30), bolt(1));
  const passes = fastenerRecord(w.job, w.entries);
  const rows = fastenerRows(passes, {
    state: (state) => state,
    means: (means) => means ?? 'unknown',
    exception: (entry) => entry.kind,
  });
  expect(rows.length).toBe(passes.reduce((sum, pass) => sum + pass.bolts.length, 0));
  expect(new Set(rows.map((row) => row.length))).toEqual(new Set([FASTENER_COLUMNS.length]));
  const first = Object.fromEntries(FASTENER_COLUMNS.map((column, i) => [column, rows[0]?.[i]]));
  expect(first).toMatchObject({ bolt: 1, state: 'done', setting: 30, 'setting-unit': 'N·m', person: 'me' });
});
