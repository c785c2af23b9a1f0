import type { PagePlan } from '../sheet/page-plan.ts';

/** One piece on a sheet. */
export interface SheetPieceReport {
  /** Path of its artwork, as in the results. */
  readonly artwork: string;
  /** Id of its blank. */
  readonly blank: string;
  /** Which of its copies, from 1. */
  readonly copy: number;
  /** The second of a pair: the mirror image of the first. */
  readonly mirroredDesign: boolean;
}

/** One sheet; `pieces[i]` lies at `page.pieces[i]`. */
export interface SheetReport {
  readonly page: PagePlan;
  readonly pieces: readonly SheetPieceReport[];
  /** Why its file was not written, where something stood in its way. */
  readonly error: { readonly code: string; readonly message: string } | null;
  /** null when nothing was written. */
  readonly output: {
    readonly path: string;
    readonly widthPx: number;
    readonly heightPx: number;
    readonly widthMm: number;
    readonly heightMm: number;
    readonly ppi: number;
  } | null;
}

/**
 * A piece that is on no sheet. `other-side`: the art of the blank's other side is at fault.
 * `nothing-printed`: none of it is visible, or all of it lies beyond the blank.
 */
export interface LeftOut {
  readonly artwork: string;
  readonly blank: string;
  readonly reason:
    | 'stop'
    | 'unreadable'
    | 'other-side'
    | 'nothing-printed'
    | 'larger-than-page'
    | 'larger-than-platen';
  /** Pieces that are missing. */
  readonly copies: number;
}

export interface SheetsReport {
  readonly sheets: readonly SheetReport[];
  readonly leftOut: readonly LeftOut[];
  /** Artworks whose pieces belong together and that no page takes together. */
  readonly apart: readonly string[];
}
