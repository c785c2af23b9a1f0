import type { SheetRecord } from './paper-records.ts';
import { SHEETS } from './seed-data.ts';

/** Every sheet of the seeds, in the order of their ids. */
export function listSheets(): readonly SheetRecord[] {
  return SHEETS;
}

/** The sheet with this id, written in small or capital letters. */
export function findSheet(id: string): SheetRecord | undefined {
  return SHEETS.find((sheet) => sheet.id === id.toLowerCase());
}
