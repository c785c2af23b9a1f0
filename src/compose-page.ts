import type { CheckedArtwork, PrintRequest } from './check-artwork.ts';
import type { ComposedPrint } from './compose-artwork.ts';
import { findPage } from './find-page.ts';
import { drawMarksOver } from './formats/draw-marks.ts';
import type { Limits } from './formats/limits.ts';
import { MM_PER_INCH } from './geometry/length.ts';
import { middleOf } from './geometry/rectangle.ts';
import { paperBoxesOf } from './job/paper.ts';
import { checkPixels } from './prepare/canvas.ts';
import { layOnto } from './raster/lay-onto.ts';
import { createRaster, type Raster } from './raster/raster.ts';
import { isWithinRing } from './raster/ring-part.ts';
import { labelPiece } from './reports/piece-label.ts';
import { rollOf } from './roll-paper.ts';
import { cutLonger, fitPage } from './sheet/fit-page.ts';
import { isBare } from './sheet/marks/mark-kinds.ts';
import type { PagePlan, PiecePlace } from './sheet/page-plan.ts';
import { planPage } from './sheet/plan-page.ts';

/**
 * The page of an artwork, before a pixel of it is made; null where no sheet is asked for, nothing is printed, or the sheet
 * does not take it. @throws BlankcheckError `print-too-large`, `margins-too-large`.
 */
export function planPageOf(
  path: string,
  { job, plan, extents }: Pick<CheckedArtwork, 'job' | 'plan' | 'extents'>,
  request: PrintRequest,
): PagePlan | null {
  const wanted = findPage(job, extents, request);
  if (!wanted?.printedMm || job === null || plan === null) return null;
  const fitting = fitPage(wanted.printedMm, wanted.paper, wanted.margins);
  if (fitting === null) return null;
  const page = isBare(request.omitMarks) ? fitting : cutLonger(fitting, wanted.paper, ROOM_FOR_MARKS_MM);
  const { scan, feed } = request.printer?.scaleCorrection ?? { scan: 1, feed: 1 };
  const { blank } = job;
  const pagePlan = planPage(
    {
      ...paperBoxesOf(blank),
      ...rollOf(blank, request.dummy),
      printedMm: wanted.printedMm,
      widthPx: plan.widthPx,
      heightPx: plan.heightPx,
      mirrored: blank.surface === 'first',
      label: labelPiece(path, request.blank, job.placementMm),
    },
    page,
    {
      paper: wanted.paper.id,
      ppi: plan.ppi,
      scaleCorrection: page.orientation === 'landscape' ? { x: feed, y: scan } : { x: scan, y: feed },
      driverMirrors: job.driverMirrors,
      ...(request.omitMarks && { without: request.omitMarks }),
    },
  );
  checkPixels(
    pagePlan.widthPx,
    pagePlan.heightPx,
    `the sheet ${pagePlan.paper} at ${plan.ppi} pixels per inch`,
  );
  return pagePlan;
}

/** Ticks before and after a piece on a roll, and a ruler or a label beyond them: what they take up; a test holds that they find room. */
const ROOM_FOR_MARKS_MM = 55;

/**
 * The picture of a page: the piece with the very pixels that its own file would have, and the marks. White around it, or
 * clear where the piece is. @throws BlankcheckError `too-slow`, the signal's reason.
 */
export function composePage(
  print: ComposedPrint,
  page: PagePlan,
  options: ComposePageOptions,
): Promise<ComposedPrint> {
  return composePieces(print, page, () => print.raster, options);
}

export interface ComposePageOptions {
  readonly limits: Limits;
  readonly signal?: AbortSignal | undefined;
}

/** The same of a page of several pieces: each with its own picture, all of the kind of `print`, whose plan is told. */
export async function composePieces(
  { picture, plan, raster }: ComposedPrint,
  page: PagePlan,
  pictureOf: (piece: number) => Raster,
  { limits, signal }: ComposePageOptions,
): Promise<ComposedPrint> {
  const { widthPx, heightPx, sizeMm } = page;
  const whole = createRaster({ ...raster, widthPx, heightPx });
  if (!raster.hasAlpha) whole.data.fill(255);
  for (const [piece, place] of page.pieces.entries()) {
    const picture = pictureOf(piece);
    layOnto(whole, picture, place.xPx, place.yPx, partOf(picture, place, page.ppi));
  }
  signal?.throwIfAborted();
  const drawn = await drawMarksOver(whole, page.marks.drawing, { x: page.ppi, y: page.ppi }, limits);
  const size = { widthPx, heightPx, widthMm: sizeMm.width, heightMm: sizeMm.height };
  return { picture, plan: { ...plan, ...size }, raster: drawn, densityPpi: page.densityPpi };
}

/** Which pixels of a picture are painted, where not all of them are: its middle is that of its bleed's box. */
function partOf(
  { widthPx, heightPx }: Raster,
  { partMm, bleedMm }: PiecePlace,
  ppi: number,
): ((x: number, y: number) => boolean) | undefined {
  if (!partMm) return undefined;
  const perMm = ppi / MM_PER_INCH;
  const { apexMm, outerRadiusMm, innerRadiusMm, angleRad, opens } = partMm;
  return isWithinRing({
    // Even to left and right, so that a driver may mirror it.
    apexPx: { x: widthPx / 2, y: heightPx / 2 + (apexMm.y - middleOf(bleedMm).y) * perMm },
    outerRadiusPx: outerRadiusMm * perMm,
    innerRadiusPx: innerRadiusMm * perMm,
    angleRad,
    opens,
  });
}
