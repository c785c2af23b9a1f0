import type { Size } from '../packing/pack-item.ts';
import type { PackingGrain } from './packing-grain.ts';
import type { SheetPiece } from './sheet-piece.ts';

/** Where the middle of a piece lies within its group, in units from the group's top left. */
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
 * The ways in which pieces that are kept together lie, in units of the grain, the gutter between them: side by side, below each
 * other, four of them as two by two; and the same with each turned, where all may be turned.
 */
export function arrangeGroup(
  pieces: readonly SheetPiece[],
  members: readonly number[],
  grain: PackingGrain,
): readonly Arrangement[] {
  const turns = members.every((piece) => pieces[piece]!.mayTurn) ? ([0, 90] as const) : ([0] as const);
  const columnCounts = [...new Set([members.length, 1, ...(members.length === 4 ? [2] : [])])];
  return turns.flatMap((turn) =>
    columnCounts.map((columns) => inColumns(pieces, members, { turn, columns, grain })),
  );
}

function inColumns(
  pieces: readonly SheetPiece[],
  members: readonly number[],
  { turn, columns, grain }: { readonly turn: 0 | 90; readonly columns: number; readonly grain: PackingGrain },
): Arrangement {
  const placed: GroupMember[] = [];
  let [width, y] = [0, 0];
  for (let first = 0; first < members.length; first += columns) {
    let [x, rowHeight] = [0, 0];
    for (const piece of members.slice(first, first + columns)) {
      const size = grain.sizeOf(pieces[piece]!, turn);
      placed.push({ piece, turn, x: x + size.width / 2, y: y + size.height / 2 });
      x += size.width + grain.gutter;
      rowHeight = Math.max(rowHeight, size.height);
    }
    width = Math.max(width, x - grain.gutter);
    y += rowHeight + grain.gutter;
  }
  return { width, height: y - grain.gutter, members: placed };
}
