import { BlankcheckError } from './blankcheck-error.ts';
import type { PrintRequest } from './check-artwork.ts';
import { LIMITS } from './formats/limits.ts';
import { formatLength, MM_PER_INCH } from './geometry/length.ts';
import { checkPixels } from './prepare/canvas.ts';
import { findPageMargins } from './printers/page-limits.ts';
import type { LeftOut } from './reports/sheets-report.ts';
import type { PagePlan } from './sheet/page-plan.ts';
import type { SizeMm } from './sheet/paper.ts';
import { MAX_PAGE_MM } from './sheet/parse-paper.ts';
import { planSheetsInSteps } from './sheet/several/plan-sheets.ts';
import { doSteps, doStepsGivingWay, type GiveWay, type Steps } from './sheet/steps.ts';
import { type LaidPiece, listLeftOut, listPieces, type SheetOrder } from './sheet-orders.ts';

export interface SheetLayout {
  /** Between two pictures; between arcs that lie in each other's hollows, from ink to ink. 0 or more. */
  readonly gutterMm: number;
  /** What the press takes at once, where whole pages are pressed. */
  readonly platenMm?: SizeMm;
}

/** What the sheets are, and what they are printed on. */
export type SheetsToLay = Pick<PrintRequest, 'sheet' | 'printer' | 'omitMarks'> & { readonly ppi: number };

/** One sheet before a pixel of it is made. */
export interface LaidSheet {
  readonly page: PagePlan;
  /** What lies at each place of the page. */
  readonly pieces: readonly LaidPiece[];
}

export interface LaidSheets {
  readonly sheets: readonly LaidSheet[];
  readonly leftOut: readonly LeftOut[];
  /** Artworks of pieces that belong together and that no page takes together. */
  readonly apart: readonly string[];
}

/**
 * Lays every copy of every order on as few sheets as the packing finds. An order of which a side is not to be printed is
 * left out, and named. The same orders give the same sheets.
 * @throws BlankcheckError `missing-sheet`, `bad-option`, `print-too-large`.
 */
export function laySheets(
  orders: readonly SheetOrder[],
  request: SheetsToLay,
  layout: SheetLayout,
): LaidSheets {
  return doSteps(laySheetsInSteps(orders, request, layout));
}

/**
 * The same, for work that may be long: thousands of pieces of many sizes. `giveWay` is asked many times a second, save while
 * the marks of one page are laid; what it throws ends the work, and nothing is left of it.
 * @throws as laySheets, and what `giveWay` throws.
 */
export function laySheetsGivingWay(
  orders: readonly SheetOrder[],
  request: SheetsToLay,
  layout: SheetLayout,
  giveWay: GiveWay,
): Promise<LaidSheets> {
  return doStepsGivingWay(laySheetsInSteps(orders, request, layout), giveWay);
}

function* laySheetsInSteps(
  orders: readonly SheetOrder[],
  request: SheetsToLay,
  { gutterMm, platenMm }: SheetLayout,
): Steps<LaidSheets> {
  const { sheet: paper, printer, ppi, omitMarks } = request;
  if (!paper)
    throw new BlankcheckError(
      'missing-sheet',
      'No sheet was given.\nName it with --sheet, such as --sheet a4.',
    );
  if (!(gutterMm >= 0 && gutterMm <= MOST_GUTTER_MM))
    throw new BlankcheckError(
      'bad-option',
      `Expected 0 mm to ${formatLength(MOST_GUTTER_MM)} between pieces, received ${gutterMm} mm.`,
    );
  const toPx = (mm: number | null) => Math.round(((mm ?? 0) / MM_PER_INCH) * ppi);
  const scaleCorrection = printer?.scaleCorrection ?? { scan: 1, feed: 1 };
  checkPixels(toPx(paper.widthMm), toPx(paper.heightMm), `the sheet ${paper.id} at ${ppi} pixels per inch`);
  const laid = orders.flatMap(listPieces);
  const plan = yield* planSheetsInSteps(
    laid.map(({ piece }) => piece),
    {
      paper,
      margins: findPageMargins(printer?.marginsMm),
      ppi,
      gutterMm,
      platenMm: platenMm ?? null,
      scaleCorrection,
      longestMm: longestPageMm(paper.widthMm / Math.min(1, scaleCorrection.scan), ppi, scaleCorrection.feed),
    },
    { driverMirrors: printer?.driverMirrors ?? false, ...(omitMarks && { without: omitMarks }) },
  );
  const tooLarge = plan.leftOut.map(({ piece, reason }): LeftOut => {
    const { artwork, blank } = laid[piece]!.told;
    return { artwork, blank, reason, copies: 1 };
  });
  const apart = plan.apart.map((group) => laid.find(({ piece }) => piece.group === group)!.told.artwork);
  return {
    sheets: plan.sheets.map(({ page, pieces }) => ({
      page,
      pieces: pieces.map((piece) => ({ ...laid[piece]!.told, printed: laid[piece]!.printed })),
    })),
    leftOut: [...orders.flatMap(listLeftOut), ...gather(tooLarge)],
    apart: [...new Set(apart)],
  };
}

/** Wider gaps than this are no gutter but a wrong unit. */
const MOST_GUTTER_MM = 100;

/**
 * The longest page of a roll, in whole millimetres: longer ones no PDF reader takes, or no picture may hold. Which of the
 * two formats it will be does not matter here, so that the pages are the same in both.
 */
function longestPageMm(acrossMm: number, ppi: number, correction: number): number {
  const acrossPx = Math.ceil((acrossMm / MM_PER_INCH) * ppi) + 1;
  const byPixels = (LIMITS.maxCanvasPixels.value / acrossPx / ppi) * MM_PER_INCH;
  return Math.floor(Math.min(MAX_PAGE_MM, byPixels) * Math.min(1, correction)) - 1;
}

/** Copies of one piece that are left out for one reason, as one. */
function gather(entries: readonly LeftOut[]): LeftOut[] {
  const byPiece = new Map<string, LeftOut>();
  for (const entry of entries) {
    const key = JSON.stringify([entry.artwork, entry.blank, entry.reason]);
    byPiece.set(key, { ...entry, copies: entry.copies + (byPiece.get(key)?.copies ?? 0) });
  }
  return [...byPiece.values()];
}
