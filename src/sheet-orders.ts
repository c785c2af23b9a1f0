import type { JudgedPiece, PrintedPiece } from './judge-piece.ts';
import type { LeftOut, SheetPieceReport } from './reports/sheets-report.ts';
import type { SheetPiece } from './sheet/several/sheet-piece.ts';

/** What is to be printed of one blank: its art, or the art of both its sides. */
export interface SheetOrder {
  readonly sides: readonly JudgedPiece[];
  /** 1 or more. */
  readonly copies: number;
  /** Each copy comes with a second one that is its mirror image. */
  readonly pair: boolean;
  /** Whether it may lie on the page turned by 90 degrees. */
  readonly mayTurn: boolean;
}

export interface LaidPiece extends SheetPieceReport {
  readonly printed: PrintedPiece;
}

/** A piece with what is printed and told of it; only `piece` is known to who lays it. */
export interface Listed {
  readonly piece: SheetPiece;
  readonly printed: PrintedPiece;
  readonly told: SheetPieceReport;
}

/** Every copy of every side; none of an order of which a side is not to be printed. */
export function listPieces({ sides, copies, pair, mayTurn }: SheetOrder, order: number): Listed[] {
  if (!isWhole(sides)) return [];
  return Array.from({ length: copies }, (_, copy) =>
    (pair ? [false, true] : [false]).flatMap((mirroredDesign) =>
      sides.map(({ report, printed }): Listed => {
        const { print, outlineMm, bleedMm, printedMm, label, roll, arc } = printed;
        return {
          printed,
          told: { artwork: report.artwork.path, blank: report.blank.id, copy: copy + 1, mirroredDesign },
          piece: {
            outlineMm,
            bleedMm,
            printedMm,
            widthPx: print.raster.widthPx,
            heightPx: print.raster.heightPx,
            // In boxes on the blank: the picture of the second of a pair is reversed as a whole.
            mirrored: printed.mirrored !== mirroredDesign,
            label,
            ...(roll && { roll }),
            ...(arc && { arc }),
            mayTurn,
            group: order * MOST_COPIES + copy,
          },
        };
      }),
    ),
  ).flat();
}

/** More copies than this are a slip of the keys. */
export const MOST_COPIES = 10_000;

type PrintedSide = JudgedPiece & { readonly printed: PrintedPiece };

function isWhole(sides: readonly JudgedPiece[]): sides is readonly PrintedSide[] {
  return sides.every(({ printed }) => printed !== null);
}

/** The sides of an order that is left out; none of others. */
export function listLeftOut({ sides, copies, pair }: SheetOrder): LeftOut[] {
  if (isWhole(sides)) return [];
  return sides.map(({ report, printed }) => ({
    artwork: report.artwork.path,
    blank: report.blank.id,
    reason: printed ? 'other-side' : reasonOf(report.status),
    copies: pair ? 2 * copies : copies,
  }));
}

function reasonOf(status: JudgedPiece['report']['status']): LeftOut['reason'] {
  return status === 'stop' || status === 'unreadable' ? status : 'nothing-printed';
}
