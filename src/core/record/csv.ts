/** A field of a table: numbers go out as they are, words are quoted where they must be. */
export type Field = string | number | null;

/**
 * Rows as comma-separated values (RFC 4180): lines end in CR LF, a field with a comma, a quote or a line break stands in
 * quotes, and quotes inside are doubled.
 *
 * Words that a spreadsheet would take for a formula get an apostrophe in front: names and documents come from people.
 */
export const csvOf = (rows: readonly (readonly Field[])[]): string =>
  rows.map((row) => `${row.map(written).join(',')}\r\n`).join('');

function written(field: Field): string {
  if (field === null) return '';
  if (typeof field === 'number') return String(field);
  const harmless = /^[=+\-@\t\r]/.test(field) ? `'${field}` : field;
  return /[",\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}
