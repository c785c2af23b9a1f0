import type { LaidSector } from '../geometry/laid-sector.ts';
import type { RectMm } from '../geometry/rectangle.ts';
import type { QuarterTurn } from '../geometry/rigid-move.ts';
import type { MarkedPage } from './marks/mark-request.ts';
import type { Orientation, SizeMm } from './paper.ts';

/** Where the picture of a piece lies on a page. */
export interface PiecePlace {
  /** Top left corner of its picture on the page as it is sent to the printer, whole pixels; it may lie beyond the page. */
  readonly xPx: number;
  readonly yPx: number;
  readonly turn: QuarterTurn;
  /** On the paper, from its top left: where the blank goes, and the same with the bleed. */
  readonly outlineMm: RectMm;
  readonly bleedMm: RectMm;
  /** Of an arc that lies in the hollow of its neighbour: all that is painted of its picture, the rest of which covers others. */
  readonly partMm?: LaidSector;
}

/** A whole page, before a pixel of it is made. Lengths are those on the paper. */
export interface PagePlan {
  /** What the paper is called. */
  readonly paper: string;
  readonly orientation: Orientation;
  readonly sizeMm: SizeMm;
  readonly printableMm: RectMm;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Pixels per inch on the paper. */
  readonly ppi: number;
  /** What the file says of itself: another density where the printer's scale is corrected. */
  readonly densityPpi: { readonly x: number; readonly y: number };
  readonly pieces: readonly PiecePlace[];
  readonly marks: MarkedPage;
}
