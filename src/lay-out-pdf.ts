import type { ComposedPrint } from './compose-artwork.ts';
import type { PdfPage } from './formats/pdf-write.ts';
import { outlineOfSector } from './geometry/laid-sector.ts';
import { MM_PER_INCH } from './geometry/length.ts';
import { middleOf, type RectMm } from './geometry/rectangle.ts';
import type { BlankInHand } from './job/job.ts';
import { paperBoxesOf } from './job/paper.ts';
import type { Raster } from './raster/raster.ts';
import type { PagePlan } from './sheet/page-plan.ts';

/**
 * The PDF of a piece alone: its page is exactly the box of its bleed, though its picture has whole pixels and may be half
 * of one larger or smaller on each side.
 */
export function composePdfPiece(
  print: ComposedPrint,
  blank: Pick<BlankInHand, 'outline' | 'edge' | 'bleed' | 'wrap'>,
): ComposedPrint {
  const { plan, raster } = print;
  const { outlineMm: outline, bleedMm: box } = paperBoxesOf(blank);
  const bleedMm = { ...box, x: 0, y: 0 };
  const trimMm = { ...outline, x: outline.x - box.x, y: outline.y - box.y };
  const page: PdfPage = {
    widthMm: box.width,
    heightMm: box.height,
    trimMm: plan.mirrored ? mirrorBox(trimMm, box.width) : trimMm,
    bleedMm,
    pictures: [{ raster, placeMm: pictureBox(raster, plan.ppi, bleedMm) }],
    drawing: [],
  };
  return { ...print, pages: [page] };
}

/** A planned page and the picture of each of its pieces: mirrored and turned as they are sent. */
export interface PicturedPage {
  readonly page: PagePlan;
  readonly pictureOf: (piece: number) => Raster;
}

/** The PDF of whole pages: pieces keep their own pixels and have exact places, marks stay vectors. `print` is any of the pieces. */
export function composePdf(
  print: ComposedPrint,
  pages: readonly PicturedPage[],
  driverMirrors: boolean,
): ComposedPrint {
  const { width: widthMm, height: heightMm } = pages[0]!.page.sizeMm;
  return {
    ...print,
    plan: { ...print.plan, widthMm, heightMm },
    pages: pages.map((page) => layOutPage(page, driverMirrors)),
  };
}

/**
 * With one piece the page's boxes are those of the blank and of its bleed; with several they are the page. Where the driver
 * mirrors, places are turned over here: the drawing of the marks and the pictures were made for it.
 */
function layOutPage({ page, pictureOf }: PicturedPage, driverMirrors: boolean): PdfPage {
  const { sizeMm, ppi, densityPpi, pieces, marks } = page;
  const asSent = (box: RectMm) => (driverMirrors ? mirrorBox(box, sizeMm.width) : box);
  const whole = { x: 0, y: 0, ...sizeMm };
  const [only, ...others] = pieces;
  const alone = others.length === 0 ? only : undefined;
  return {
    widthMm: sizeMm.width,
    heightMm: sizeMm.height,
    trimMm: alone ? asSent(alone.outlineMm) : whole,
    bleedMm: alone ? asSent(alone.bleedMm) : whole,
    pictures: pieces.map(({ bleedMm, partMm }, index) => {
      const raster = pictureOf(index);
      const placeMm = asSent(pictureBox(raster, ppi, bleedMm));
      if (!partMm) return { raster, placeMm };
      const { x, y } = partMm.apexMm;
      const apexMm = { x: driverMirrors ? sizeMm.width - x : x, y };
      return { raster, placeMm, clip: outlineOfSector({ ...partMm, apexMm }) };
    }),
    drawing: marks.drawing,
    scale: { x: ppi / densityPpi.x, y: ppi / densityPpi.y },
  };
}

/** A picture at its true size, in the middle of a box. */
function pictureBox({ widthPx, heightPx }: Raster, ppi: number, box: RectMm): RectMm {
  const width = (widthPx * MM_PER_INCH) / ppi;
  const height = (heightPx * MM_PER_INCH) / ppi;
  const { x, y } = middleOf(box);
  return { x: x - width / 2, y: y - height / 2, width, height };
}

function mirrorBox(box: RectMm, widthMm: number): RectMm {
  return { ...box, x: widthMm - box.x - box.width };
}
