import type { Drawing } from '../../geometry/drawing.ts';
import type { LaidSector } from '../../geometry/laid-sector.ts';
import type { RectMm } from '../../geometry/rectangle.ts';
import type { QuarterTurn } from '../../geometry/rigid-move.ts';
import type { MarkKind } from './mark-kinds.ts';

/** One piece as it lies on the paper, seen from the printed side; origin top left of the page. */
export interface MarkedPiece {
  /** Box of the blank's outline: where the blank goes. */
  readonly outlineMm: RectMm;
  /** The same with the bleed: all that is inked lies in it, and no mark does. It may reach over the page. */
  readonly bleedMm: RectMm;
  /** How the piece was turned to lie on the page, clockwise: at 90 the top of its art is on the right. */
  readonly turn: QuarterTurn;
  /** Whether words of the art must read backwards on the paper (the blank's surface asks for mirroring). */
  readonly mirrored: boolean;
  /** What the label says, line by line: art, blank, size, recipe. Pieces with the same lines may share one label. */
  readonly label: readonly string[];
  /** Of a round body's paper, where it lies: to be cut and rolled by. On an arc corners of the box mean nothing. */
  readonly roll?: { readonly lines: Drawing; readonly isArc: boolean } | undefined;
  /** Of an arc among others that reach into its box: what its bleed really covers. Lines of theirs keep away from that, and from its own. */
  readonly arcMm?: LaidSector | undefined;
}

/** A page as it shall look on the paper. */
export interface MarkRequest {
  readonly pageMm: { readonly width: number; readonly height: number };
  /** The part that the printer can print, from the top left of the page. */
  readonly printableMm: RectMm;
  readonly pieces: readonly MarkedPiece[];
  /**
   * The driver mirrors the whole page: then the drawing, marks too, is the mirror image of what shall be on the paper.
   * False by default.
   */
  readonly driverMirrors?: boolean;
  /** Marks that are not wanted; none by default. */
  readonly without?: readonly MarkKind[];
}

export type PageSide = 'top' | 'right' | 'bottom' | 'left';

/** Which of the marks of one kind: those of a piece name it (counted from 0), ticks their side, rulers their axis. */
export interface MarkName {
  readonly mark: MarkKind;
  readonly piece?: number;
  readonly side?: PageSide;
  readonly axis?: 'x' | 'y';
}

/** A mark that is on the page. */
export interface ShownMark extends MarkName {
  /** Box of all its ink, on the paper. */
  readonly boxMm: RectMm;
  /** Of a ruler: from end to end. */
  readonly lengthMm?: number;
  /** Of a label: the pieces it speaks of. */
  readonly pieces?: readonly number[];
}

/** A mark that is not. `off`: not wanted. `no-room`: nowhere in the printable part without touching something. */
export interface DroppedMark extends MarkName {
  readonly reason: 'off' | 'no-room';
}

export interface MarkedPage {
  /** In mm of the page as it is sent to the printer. Colours are sRGB. */
  readonly drawing: Drawing;
  readonly shown: readonly ShownMark[];
  /** In the order of `MARK_KINDS`. */
  readonly dropped: readonly DroppedMark[];
}
