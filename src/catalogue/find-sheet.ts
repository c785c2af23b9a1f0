import type { RollRecord, SheetRecord } from './paper-records.ts';
import { ROLLS, SHEETS } from './seed-data.ts';

/** Every sheet of the seeds, in the order of their ids. */
export function listSheets(): readonly SheetRecord[] {
  return SHEETS;
}

/** Every roll of the seeds, the narrowest first. */
export function listRolls(): readonly RollRecord[] {
  return [...ROLLS].sort((one, other) => one.widthMm - other.widthMm);
}

/** The sheet with this id or alias, written in small or capital letters. */
export function findSheet(word: string): SheetRecord | undefined {
  const wanted = word.toLowerCase();
  return SHEETS.find(({ id, aliases = [] }) => id === wanted || aliases.includes(wanted));
}
