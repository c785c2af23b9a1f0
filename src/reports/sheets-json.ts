import { roundNumbers, roundRect } from './round-numbers.ts';
import type { SheetReport, SheetsReport } from './sheets-report.ts';
import { countDropped } from './text-sheets.ts';

/** The part of a report's document that only `sheet` gives. Marks that are not on a page are counted by kind. */
export function sheetsJsonOf({ sheets, leftOut, apart }: SheetsReport): object {
  return {
    sheets: sheets.map(sheetOf),
    leftOut: leftOut.map(({ artwork, blank, reason, copies }) => ({ artwork, blank, reason, copies })),
    apart: [...apart],
  };
}

function sheetOf({ page, pieces, error, output }: SheetReport, index: number): object {
  const { paper, orientation, sizeMm, printableMm, marks } = page;
  return {
    page: index + 1,
    paper,
    orientation,
    ...roundNumbers({ widthMm: sizeMm.width, heightMm: sizeMm.height }),
    printableMm: roundRect(printableMm),
    pieces: pieces.map(({ artwork, blank, copy, mirroredDesign }, at) => {
      const { outlineMm, bleedMm, turn } = page.pieces[at]!;
      return {
        artwork,
        blank,
        copy,
        placeMm: roundRect(outlineMm),
        bleedMm: roundRect(bleedMm),
        turn,
        mirroredDesign,
      };
    }),
    marks: marks.shown.map(({ mark, piece, pieces: speaksOf, side, axis, boxMm, lengthMm }) => ({
      mark,
      ...(piece !== undefined && { piece }),
      ...(speaksOf && { pieces: [...speaksOf] }),
      ...(side && { side }),
      ...(axis && { axis }),
      boxMm: roundRect(boxMm),
      ...(lengthMm !== undefined && { lengthMm }),
    })),
    droppedMarks: countDropped(marks.dropped).map(({ mark, reason, count }) => ({ mark, reason, count })),
    error: error && { code: error.code, message: error.message },
    output: output && roundNumbers({ ...output }),
  };
}
