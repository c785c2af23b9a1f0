import type { Sector } from '../../geometry/sector.ts';
import type { PageOptions, SinglePiece } from '../plan-page.ts';

/** One of the pieces that share pages. */
export interface SheetPiece extends SinglePiece {
  /** Whether it may lie on the page turned by 90 degrees. */
  readonly mayTurn: boolean;
  /** Pieces of the same number are kept together. */
  readonly group: number;
  /**
   * Of a tapered body's paper whose ink keeps within its bleed, as an arc that fills the bleed's box: then it may lie in the
   * hollow of another.
   */
  readonly arc?: Sector | undefined;
}

/** Why a piece is on no page. */
export type LeftOutReason = 'larger-than-page' | 'larger-than-platen';

/** What of a page's options is the same however it is held. */
export type SheetsOptions = Pick<PageOptions, 'driverMirrors' | 'without'>;
