import { fitPage } from '../fit-page.ts';
import type { PagePlan } from '../page-plan.ts';
import type { SizeMm } from '../paper.ts';
import { planPage } from '../plan-page.ts';
import { doSteps, type Steps } from '../steps.ts';
import { fewer, nestArcs } from './nest-arcs.ts';
import { packGroups } from './pack-groups.ts';
import { packRoll } from './pack-roll.ts';
import { listPageWays, type SheetsRequest } from './page-ways.ts';
import { planFullPage } from './plan-full-page.ts';
import { shareAlike } from './share-pages.ts';
import type { LeftOutReason, SheetPiece, SheetsOptions } from './sheet-piece.ts';

export interface PlannedSheet {
  readonly page: PagePlan;
  /** Which piece lies at each place of the page. */
  readonly pieces: readonly number[];
}

export interface SheetsPlan {
  readonly sheets: readonly PlannedSheet[];
  readonly leftOut: readonly { readonly piece: number; readonly reason: LeftOutReason }[];
  /** Groups that no page takes together: their pieces are packed one by one. */
  readonly apart: readonly number[];
}

/**
 * Pieces on as few pages as the packing finds, every piece once; on a roll, on pages as short as it finds. Of ways that
 * need as many pages, the one with the most room for marks. Arcs lie in each other's hollows only where that saves paper. A piece whose picture is too large for a page gets one of its own where what is inked of it is not;
 * else it is left out. The same pieces give the same pages.
 */
export function planSheets(
  pieces: readonly SheetPiece[],
  request: SheetsRequest,
  options: SheetsOptions,
): SheetsPlan {
  return doSteps(planSheetsInSteps(pieces, request, options));
}

/** The same, with rests between. */
export function* planSheetsInSteps(
  pieces: readonly SheetPiece[],
  request: SheetsRequest,
  options: SheetsOptions,
): Steps<SheetsPlan> {
  const packed =
    request.paper.heightMm === null
      ? yield* packRoll(pieces, request, options.without)
      : yield* packGroups(pieces, listPageWays(request));
  const { apart, misfits } = packed;
  const pages = fewer(packed.pages, nestArcs(pieces, request, options.without));
  const planPageOf = shareAlike(pieces, (page) => planFullPage(pieces, page, request, options));
  const sheets: PlannedSheet[] = [];
  for (const page of pages) {
    sheets.push({ page: planPageOf(page), pieces: page.members.map(({ piece }) => piece) });
    yield;
  }
  const leftOut: SheetsPlan['leftOut'][number][] = [];
  for (const piece of misfits) {
    const sheet = planOwnPage(pieces[piece]!, request, options);
    if (sheet) sheets.push({ page: sheet, pieces: [piece] });
    else leftOut.push({ piece, reason: reasonOf(pieces[piece]!, request) });
  }
  return { sheets, leftOut, apart };
}

function planOwnPage(
  piece: SheetPiece,
  { paper, margins, ppi, platenMm, scaleCorrection: { scan, feed } }: SheetsRequest,
  options: SheetsOptions,
): PagePlan | null {
  if (platenMm && !fitsOn(piece.printedMm, platenMm)) return null;
  const page = fitPage(piece.printedMm, paper, margins);
  if (page === null) return null;
  const scaleCorrection = page.orientation === 'landscape' ? { x: feed, y: scan } : { x: scan, y: feed };
  return planPage(piece, page, { paper: paper.id, ppi, scaleCorrection, ...options });
}

function reasonOf({ printedMm }: SheetPiece, { platenMm }: SheetsRequest): LeftOutReason {
  return platenMm && !fitsOn(printedMm, platenMm) ? 'larger-than-platen' : 'larger-than-page';
}

function fitsOn({ width, height }: SizeMm, platen: SizeMm): boolean {
  return (
    (width <= platen.width && height <= platen.height) || (width <= platen.height && height <= platen.width)
  );
}
