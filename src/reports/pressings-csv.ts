import { celsiusOf, fahrenheitOf, type Temperature } from '../ledger/heat.ts';
import type { LedgerEntry } from '../ledger/pressing.ts';

type Cell = string | number | undefined;

const COLUMNS: Readonly<Record<string, (entry: LedgerEntry) => Cell>> = {
  line: ({ line }) => line,
  at: ({ pressing }) => pressing.at,
  result: ({ pressing }) => pressing.result,
  defects: ({ pressing }) => pressing.defects.join(' '),
  blank: ({ pressing }) => pressing.blank.id,
  lot: ({ pressing }) => pressing.blank.lot,
  measured: ({ pressing }) => pressing.blank.measured,
  art: ({ pressing }) => pressing.art?.file,
  artSha256: ({ pressing }) => pressing.art?.sha256,
  printer: ({ pressing }) => pressing.printer,
  paper: ({ pressing }) => pressing.paper,
  temperatureC: ({ pressing }) => tenths(pressing.recipe.temperature, celsiusOf),
  temperatureF: ({ pressing }) => tenths(pressing.recipe.temperature, fahrenheitOf),
  platenTemperatureC: ({ pressing }) => tenths(pressing.recipe.platenTemperature, celsiusOf),
  platenTemperatureF: ({ pressing }) => tenths(pressing.recipe.platenTemperature, fahrenheitOf),
  timeS: ({ pressing }) => pressing.recipe.timeS,
  pressure: ({ pressing }) => pressing.recipe.pressure,
  photo: ({ pressing }) => pressing.photo?.file,
  photoSha256: ({ pressing }) => pressing.photo?.sha256 ?? undefined,
  note: ({ pressing }) => pressing.note,
};

/**
 * A table for spreadsheets (RFC 4180, UTF-8, first row: names of the columns); what was not written down is empty. Text
 * that a spreadsheet would take for a formula is led by an apostrophe, so that a note cannot run one.
 */
export function renderPressingsCsv(entries: readonly LedgerEntry[]): string {
  const columns = Object.values(COLUMNS);
  const rows = entries.map((entry) => columns.map((column) => cellOf(column(entry))));
  return [Object.keys(COLUMNS), ...rows].map((row) => `${row.join(',')}\r\n`).join('');
}

/** Also behind spaces, which some programs skip, and in the full-width forms (OWASP, CSV injection, from memory). */
const FORMULA = /^\s*[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r\n]/u;

function cellOf(value: Cell): string {
  if (value === undefined) return '';
  if (typeof value === 'number') return String(value);
  const text = FORMULA.test(value) ? `'${value}` : value;
  return /^[\w .:-]*$/.test(text) ? text : `"${text.replaceAll('"', '""')}"`;
}

function tenths(
  temperature: Temperature | undefined,
  convert: (typed: Temperature) => number,
): number | undefined {
  return temperature && Math.round(convert(temperature) * 10) / 10;
}
