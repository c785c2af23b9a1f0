import { showHidden } from './visible-text.ts';

export type CsvCell = string | number | null | undefined;

/**
 * A table for spreadsheets (RFC 4180, UTF-8, first row: names of the columns); null and undefined are empty. Text that a
 * spreadsheet would take for a formula is led by an apostrophe, so that no name and no note can run one. Characters that steer
 * a terminal or hide are written as `showHidden` does: a table is read with `cat` too. Lines of a text stay lines of its cell.
 */
export function renderCsv<Row>(
  columns: Readonly<Record<string, (row: Row) => CsvCell>>,
  rows: readonly Row[],
): string {
  const cells = rows.map((row) => Object.values(columns).map((column) => cellOf(column(row))));
  return [Object.keys(columns), ...cells].map((line) => `${line.join(',')}\r\n`).join('');
}

/** Also behind spaces, which some programs skip, and in the full-width forms (OWASP, CSV injection, from memory). */
const FORMULA = /^\s*[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r\n]/u;

function cellOf(value: CsvCell): string {
  if (value === undefined || value === null) return '';
  if (typeof value === 'number') return String(value);
  const shown = value.split('\n').map(showHidden).join('\n');
  const text = FORMULA.test(shown) ? `'${shown}` : shown;
  return /^[\w .:-]*$/.test(text) ? text : `"${text.replaceAll('"', '""')}"`;
}
