import { BlankcheckError } from './blankcheck-error.ts';
import type { PrintRequest } from './check-artwork.ts';
import type { WantedPage } from './checks/define-check.ts';
import { findPrintedPart } from './job/find-inked-part.ts';
import type { Job } from './job/job.ts';
import { paperBoxesOf } from './job/paper.ts';
import { findPageMargins } from './printers/page-limits.ts';
import type { Extents } from './raster/survey.ts';
import { leavesNoRoom } from './sheet/fit-page.ts';

/**
 * The paper that is asked for and what it has to take; null where no page is asked for.
 * @throws BlankcheckError `margins-too-large` where the printer leaves nothing of the paper to print on.
 */
export function findPage(
  job: Job | null,
  extents: Extents,
  { sheet, printer, background }: PrintRequest,
): WantedPage | null {
  if (sheet === undefined) return null;
  const margins = findPageMargins(printer?.marginsMm);
  if (leavesNoRoom(sheet, margins)) {
    throw new BlankcheckError(
      'margins-too-large',
      `The margins of the printer leave nothing of the sheet ${sheet.id} to print on.\nTake a larger --sheet, or look at marginsMm in the record of the printer.`,
    );
  }
  if (job === null) return { paper: sheet, margins, printedMm: null };
  const printedMm = showsOnPaper(background)
    ? paperBoxesOf(job.blank).bleedMm
    : findPrintedPart(job, extents);
  return { paper: sheet, margins, printedMm };
}

/** A background that is neither white nor clear is printed all over the canvas. */
export function showsOnPaper(background: PrintRequest['background']): boolean {
  if (background === undefined || background.alpha === 0) return false;
  const { r, g, b } = background;
  return r !== 255 || g !== 255 || b !== 255;
}
