import { listRolls, listSheets } from '../catalogue/find-sheet.ts';
import type { SheetRecord } from '../catalogue/paper-records.ts';
import { fitPage } from './fit-page.ts';
import type { PageMargins, SizeMm } from './paper.ts';

/** Ids of the smallest papers that take something; null where none of the family does. */
export interface SmallestSheets {
  readonly iso: string | null;
  readonly inch: string | null;
  readonly roll: string | null;
}

/** The smallest sheet of each family, by area, and the narrowest roll, that take this size within these margins. */
export function findSmallestSheets(neededMm: SizeMm, margins: PageMargins): SmallestSheets {
  return {
    iso: smallestOf('iso_', neededMm, margins),
    inch: smallestOf('na_', neededMm, margins),
    roll:
      listRolls().find(({ id, widthMm }) => fitPage(neededMm, { id, widthMm, heightMm: null }, margins))
        ?.id ?? null,
  };
}

/** A media name begins with the body that named the size; sheets without one belong to no family. @see PWG 5101.1 */
function smallestOf(family: 'iso_' | 'na_', neededMm: SizeMm, margins: PageMargins): string | null {
  const area = ({ widthMm, heightMm }: SheetRecord) => widthMm * heightMm;
  const [smallest] = listSheets()
    .filter(({ pwgName }) => pwgName?.startsWith(family))
    .filter((sheet) => fitPage(neededMm, sheet, margins))
    .sort((one, other) => area(one) - area(other));
  return smallest?.id ?? null;
}
