import type { Size } from '../packing/pack-item.ts';
import type { SheetPiece } from './sheet-piece.ts';

/** Where a piece lies within its group, in pixels from the group's top left. */
export interface GroupMember {
  readonly piece: number;
  readonly turn: 0 | 90;
  readonly x: number;
  readonly y: number;
}

/** One way in which the pieces of a group lie beside each other. */
export interface Arrangement extends Size {
  readonly members: readonly GroupMember[];
}

/**
 * The ways in which pieces that are kept together lie, in pixels, the gutter between them: side by side, below each
 * other, four of them as two by two; and the same with each turned, where all may be turned.
 */
export function arrangeGroup(
  pieces: readonly SheetPiece[],
  members: readonly number[],
  gutterPx: number,
): readonly Arrangement[] {
  const turns = members.every((piece) => pieces[piece]!.mayTurn) ? ([0, 90] as const) : ([0] as const);
  const columnCounts = [...new Set([members.length, 1, ...(members.length === 4 ? [2] : [])])];
  return turns.flatMap((turn) =>
    columnCounts.map((columns) => inColumns(pieces, members, { turn, columns, gutterPx })),
  );
}

function inColumns(
  pieces: readonly SheetPiece[],
  members: readonly number[],
  { turn, columns, gutterPx }: { readonly turn: 0 | 90; readonly columns: number; readonly gutterPx: number },
): Arrangement {
  const placed: GroupMember[] = [];
  let [width, y] = [0, 0];
  for (let first = 0; first < members.length; first += columns) {
    let [x, rowHeight] = [0, 0];
    for (const piece of members.slice(first, first + columns)) {
      placed.push({ piece, turn, x, y });
      const size = sizeOf(pieces[piece]!, turn);
      x += size.width + gutterPx;
      rowHeight = Math.max(rowHeight, size.height);
    }
    width = Math.max(width, x - gutterPx);
    y += rowHeight + gutterPx;
  }
  return { width, height: y - gutterPx, members: placed };
}

function sizeOf({ widthPx, heightPx }: SheetPiece, turn: 0 | 90): Size {
  return turn === 0 ? { width: widthPx, height: heightPx } : { width: heightPx, height: widthPx };
}
