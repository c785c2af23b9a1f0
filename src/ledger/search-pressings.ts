import type { LedgerEntry, Pressing } from './pressing.ts';

/**
 * The entries in which every word occurs, be it within a longer one, in large or small letters: in art, blank, lot,
 * printer, paper, pressure, defects, note or date. What worked comes first: by result, then the newest, then the later
 * line. No words: all entries.
 */
export function searchPressings(
  entries: readonly LedgerEntry[],
  words: readonly string[],
): readonly LedgerEntry[] {
  const asked = words.flatMap((word) => fold(word).split(/\s+/)).filter((word) => word !== '');
  return entries
    .filter(({ pressing }) => {
      if (asked.length === 0) return true;
      const text = fold(searchable(pressing));
      return asked.every((word) => text.includes(word));
    })
    .sort(bestFirst);
}

function bestFirst(a: LedgerEntry, b: LedgerEntry): number {
  if (a.pressing.result !== b.pressing.result) return b.pressing.result - a.pressing.result;
  if (a.pressing.at !== b.pressing.at) return a.pressing.at < b.pressing.at ? 1 : -1;
  return b.line - a.line;
}

/** The two ways to spell an accented letter are one. */
function fold(text: string): string {
  return text.normalize('NFC').toLowerCase();
}

function searchable({ at, art, blank, printer, paper, recipe, defects, note }: Pressing): string {
  return [
    at,
    art?.file,
    art?.sha256,
    blank.id,
    blank.name,
    blank.lot,
    printer,
    paper,
    recipe.pressure,
    ...defects,
    note,
  ]
    .filter((word) => word !== undefined)
    .join('\n');
}
