import { celsiusOf, fahrenheitOf, type Temperature } from '../ledger/heat.ts';
import type { LedgerEntry } from '../ledger/pressing.ts';
import { type CsvCell, renderCsv } from './csv.ts';
import { showHidden } from './visible-text.ts';

const COLUMNS: Readonly<Record<string, (entry: LedgerEntry) => CsvCell>> = {
  line: ({ line }) => line,
  at: ({ pressing }) => pressing.at,
  result: ({ pressing }) => pressing.result,
  defects: ({ pressing }) => pressing.defects.join(' '),
  blank: ({ pressing }) => pressing.blank.id,
  lot: ({ pressing }) => pressing.blank.lot,
  measured: ({ pressing }) => pressing.blank.measured,
  art: ({ pressing }) => pressing.art && showHidden(pressing.art.file),
  artSha256: ({ pressing }) => pressing.art?.sha256,
  printer: ({ pressing }) => pressing.printer,
  paper: ({ pressing }) => pressing.paper,
  temperatureC: ({ pressing }) => tenths(pressing.recipe.temperature, celsiusOf),
  temperatureF: ({ pressing }) => tenths(pressing.recipe.temperature, fahrenheitOf),
  platenTemperatureC: ({ pressing }) => tenths(pressing.recipe.platenTemperature, celsiusOf),
  platenTemperatureF: ({ pressing }) => tenths(pressing.recipe.platenTemperature, fahrenheitOf),
  timeS: ({ pressing }) => pressing.recipe.timeS,
  pressure: ({ pressing }) => pressing.recipe.pressure,
  photo: ({ pressing }) => pressing.photo && showHidden(pressing.photo.file),
  photoSha256: ({ pressing }) => pressing.photo?.sha256 ?? undefined,
  note: ({ pressing }) => pressing.note,
};

/** Pressings as a table for spreadsheets; what was not written down is empty. */
export function renderPressingsCsv(entries: readonly LedgerEntry[]): string {
  return renderCsv(COLUMNS, entries);
}

function tenths(
  temperature: Temperature | undefined,
  convert: (typed: Temperature) => number,
): number | undefined {
  return temperature && Math.round(convert(temperature) * 10) / 10;
}
