import type { Drawing } from '../geometry/drawing.ts';
import { MM_PER_INCH } from '../geometry/length.ts';
import type { RectMm } from '../geometry/rectangle.ts';
import { moveDrawing } from '../geometry/rigid-move.ts';
import type { Page } from './fit-page.ts';
import { layMarks } from './marks/lay-marks.ts';
import type { MarkKind } from './marks/mark-kinds.ts';
import type { PagePlan, PiecePlace } from './page-plan.ts';

/** A piece that gets a page of its own; boxes in mm on the blank, as it is looked at. */
export interface SinglePiece {
  readonly outlineMm: RectMm;
  /** The box of its print-ready picture. */
  readonly bleedMm: RectMm;
  /** All that is inked. */
  readonly printedMm: RectMm;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Whether it reads backwards on the paper. */
  readonly mirrored: boolean;
  readonly label: readonly string[];
  /** Of a round body's paper, in the frame of its boxes. */
  readonly roll?: { readonly lines: Drawing; readonly isArc: boolean } | undefined;
}

export interface PageOptions {
  readonly paper: string;
  readonly ppi: number;
  /** Intended / printed length along the axes of the page. */
  readonly scaleCorrection: { readonly x: number; readonly y: number };
  readonly driverMirrors: boolean;
  readonly without?: readonly MarkKind[];
}

/**
 * The page of one piece, which lies in the middle of the printable part: all of its picture where that fits, else what of
 * it is inked. A printer that prints too short makes a smaller page of what it is sent; so the page is planned at the size
 * that it will have on the paper, and the file's density makes up for the difference: no pixel of the piece is resampled.
 */
export function planPage(piece: SinglePiece, page: Page, options: PageOptions): PagePlan {
  const { ppi, scaleCorrection, driverMirrors, paper, without } = options;
  const pixelMm = MM_PER_INCH / ppi;
  const { sizeMm, printableMm, widthPx, heightPx } = pageOnPaper(page, options);
  const x = Math.round(startOf('x', 'width', piece, printableMm) / pixelMm);
  const y = Math.round(startOf('y', 'height', piece, printableMm) / pixelMm);
  const canvasMm = {
    x: x * pixelMm,
    y: y * pixelMm,
    width: piece.widthPx * pixelMm,
    height: piece.heightPx * pixelMm,
  };
  const place: PiecePlace = {
    xPx: driverMirrors ? widthPx - x - piece.widthPx : x,
    yPx: y,
    turn: 0,
    // The middle of the picture is the middle of the box, whatever its whole pixels make of the size.
    bleedMm: centredIn(canvasMm, piece.bleedMm),
    outlineMm: onPaper(piece.outlineMm, piece, centredIn(canvasMm, piece.bleedMm)),
  };
  const { outlineMm, turn } = place;
  const marks = layMarks({
    pageMm: sizeMm,
    printableMm,
    pieces: [
      {
        outlineMm,
        bleedMm: place.bleedMm,
        turn,
        mirrored: piece.mirrored,
        label: piece.label,
        ...(piece.roll && { roll: { ...piece.roll, lines: linesOnPaper(piece, place.bleedMm) } }),
      },
    ],
    driverMirrors,
    ...(without && { without }),
  });
  return {
    paper,
    orientation: page.orientation,
    sizeMm,
    printableMm,
    widthPx,
    heightPx,
    ppi,
    densityPpi: { x: ppi / scaleCorrection.x, y: ppi / scaleCorrection.y },
    pieces: [place],
    marks,
  };
}

/** The page at the size that it will have on the paper. */
export function pageOnPaper(
  page: Page,
  { ppi, scaleCorrection: { x, y } }: Pick<PageOptions, 'ppi' | 'scaleCorrection'>,
): Pick<PagePlan, 'sizeMm' | 'printableMm' | 'widthPx' | 'heightPx'> {
  const sizeMm = { width: page.sizeMm.width / x, height: page.sizeMm.height / y };
  const printable = page.printableMm;
  return {
    sizeMm,
    printableMm: {
      x: printable.x / x,
      y: printable.y / y,
      width: printable.width / x,
      height: printable.height / y,
    },
    widthPx: Math.round((sizeMm.width / MM_PER_INCH) * ppi),
    heightPx: Math.round((sizeMm.height / MM_PER_INCH) * ppi),
  };
}

/** Where the picture begins along an axis. */
function startOf(axis: 'x' | 'y', size: 'width' | 'height', piece: SinglePiece, printableMm: RectMm): number {
  const { bleedMm, printedMm } = piece;
  const room = printableMm[size];
  if (bleedMm[size] <= room) return printableMm[axis] + (room - bleedMm[size]) / 2;
  const inked = onPaper(printedMm, piece, { ...bleedMm, x: 0, y: 0 });
  return printableMm[axis] + (room - inked[size]) / 2 - inked[axis];
}

/** A box of the blank on the paper, where the bleed's box lies at `bleedOnPaperMm`. */
function onPaper(box: RectMm, { bleedMm, mirrored }: SinglePiece, bleedOnPaperMm: RectMm): RectMm {
  const fromLeft = box.x - bleedMm.x;
  const left = mirrored ? bleedMm.width - fromLeft - box.width : fromLeft;
  return { ...box, x: bleedOnPaperMm.x + left, y: bleedOnPaperMm.y + box.y - bleedMm.y };
}

function linesOnPaper({ roll, bleedMm, mirrored }: SinglePiece, onPaperMm: RectMm): Drawing {
  const left = mirrored ? onPaperMm.x + bleedMm.x + bleedMm.width : onPaperMm.x - bleedMm.x;
  return moveDrawing(roll?.lines ?? [], { mirrored, by: { x: left, y: onPaperMm.y - bleedMm.y } });
}

function centredIn(outer: RectMm, { width, height }: RectMm): RectMm {
  return {
    x: outer.x + (outer.width - width) / 2,
    y: outer.y + (outer.height - height) / 2,
    width,
    height,
  };
}
