import { pressCard } from '../catalogue/press-card.ts';
import type { BlankRecord } from '../catalogue/records.ts';
import { formatSize } from '../geometry/length.ts';
import { startInWords } from './press-words.ts';

/** Letters that leave room in a label for the words behind them (own choice, by trial on the catalogue). */
const LONG = 60;

/** What stands beside a piece on its sheet: art, blank and printed size, and the point of the recipe to try first. */
export function labelPiece(
  path: string,
  blank: BlankRecord,
  { width, height }: { readonly width: number; readonly height: number },
): readonly string[] {
  const art = path.split(/[\\/]/).at(-1) ?? path;
  const { recipe } = pressCard(blank);
  const start = recipe ? startInWords(recipe) : '';
  // A note on the pressure makes the line longer than labels are wide.
  const press =
    start === ''
      ? ["press by the sheet of the blank's maker"]
      : start.length > LONG
        ? [`press ${start}`, "the maker's sheet wins"]
        : [`press ${start}; the maker's sheet wins`];
  const roll = blank.wrap ? ['long ticks: ends and seam; short ticks: quarters of the way round'] : [];
  return [art, `${blank.id}, art ${formatSize(width, height)}`, ...press, ...roll];
}
